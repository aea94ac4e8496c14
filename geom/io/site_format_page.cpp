#include "geom/io/site_format_page.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "geom/io/field_bounds.hpp"
#include "geom/io/field_writer.hpp"
#include "geom/site/site.hpp"

namespace yardwright {

namespace {

/// Builds the rows of one table; a struct within gets rows of its own, its keys after a dot.
class Rows {
 public:
  explicit Rows(std::string before = "") : before_{std::move(before)} {}

  template <class Member>
  void operator()(const Field& field, const Member& member) {
    const std::string means = field.label == field.means ? "" : std::string{field.means};
    const auto quantity = bounded_quantity(field, member);
    rows_ += fmt::format("| `{}{}` | {} | {} | {} | {} |\n", before_, field.key, value_words(field, member), means,
                         quantity ? bounds_words(field, *quantity) : "", default_words(field, member));
  }

  template <Fielded Struct>
  void operator()(const Field& field, const Struct& member) {
    Rows inner{fmt::format("{}{}.", before_, field.key)};
    visit_fields(member, inner);
    rows_ += inner.text();
  }

  const std::string& text() const { return rows_; }

 private:
  static std::string number_words(Quantity quantity) {
    const std::string unit = unit_words(quantity);
    return unit.empty() ? "number" : unit;
  }
  static std::string value_words(const Field& field, double) { return number_words(field.quantity); }
  static std::string value_words(const Field&, Angle) { return number_words(Quantity::angle); }
  static std::string value_words(const Field&, Bearing) { return number_words(Quantity::bearing); }
  static std::string value_words(const Field&, int) { return "whole number"; }
  static std::string value_words(const Field&, bool) { return "true or false"; }
  static std::string value_words(const Field&, const std::string&) { return "text"; }
  static std::string value_words(const Field&, const MassCurve&) { return "text: times with shares"; }
  static std::string value_words(const Field&, const RainTable&) { return "text: years with depths"; }
  static std::string value_words(const Field&, ItemId) { return "id or null"; }
  static std::string value_words(const Field&, const std::vector<ItemId>&) { return "list of ids"; }
  static std::string value_words(const Field&, SitePoint) { return "point"; }
  static std::string value_words(const Field& field, const SitePath&) {
    return field.closed ? "ring of points" : "list of points";
  }
  template <class Enum>
  requires std::is_enum_v<Enum>
  static std::string value_words(const Field&, Enum) { return fmt::format("{}", fmt::join(names_of(Enum{}), ", ")); }
  template <class Enum>
  requires std::is_enum_v<Enum>
  static std::string value_words(const Field& field, const std::vector<Enum>&) {
    return "list of " + value_words(field, Enum{});
  }

  template <class Member>
  static std::string default_words(const Field& field, const Member& member) {
    if constexpr (std::is_same_v<Member, SitePoint> || std::is_same_v<Member, SitePath>)
      return "must be given";
    else
      return fmt::format("`{}`", FieldWriter{UnitSystem::us}.json_of(field, member));
  }

  std::string before_, rows_;
};

template <class Struct>
std::string table(std::string_view title, const Struct& value) {
  Rows rows;
  visit_fields(value, rows);
  return fmt::format(
      "### {}\n\n| field | value | meaning | bounds | default (US) |\n| --- | --- | --- | --- | --- |\n{}\n", title,
      rows.text());
}

}  // namespace

std::string site_format_tables() {
  const Site site;
  std::string text = table("`title`", site.title) + table("`tie`", site.tie) + table("`lot`", site.lot) +
                     table("`ground`", site.ground) + table("`storm`", site.storm);
  for (const Thing& thing : every_kind()) {
    const std::string title = fmt::format("kind `{}`: {}", kind_key(thing), kind_label(thing));
    text += std::visit([&](const auto& kind) { return table(title, kind); }, thing);
  }
  return text;
}

}  // namespace yardwright
