#include "editor/session/field_rows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <sstream>

#include "geom/units/text.hpp"

namespace yardwright::session {

namespace {

template <class Member>
concept Enumeration = std::is_enum_v<Member>;
template <class Member>
concept Group = requires(Member& member) { visit_fields(member, [](const Field&, auto&) {}); };

std::string spoken(std::string_view key) {
  std::string words{key};
  std::ranges::replace(words, '-', ' ');
  return words;
}

/// The fewest digits in the shown unit that a tape could not tell from the value: "6 ft" for 1.8288 m.
std::string text_for_typing(double si, Quantity quantity, UnitSystem units) {
  constexpr double same_ratio = 4e-7;
  const double factor = shown_unit(quantity, units).factor;
  for (int digits = 1; digits <= 10; ++digits) {
    const double rounded = std::stod(fmt::format("{:.{}g}", si / factor, digits)) * factor;
    if (std::abs(rounded - si) <= same_ratio * std::abs(si)) return exact_text_of(rounded, quantity, units);
  }
  return exact_text_of(si, quantity, units);
}

template <class Record>
std::vector<Choice> choices_from(const std::vector<Record>& records) {
  std::vector<Choice> choices;
  for (const Record& record : records) choices.push_back({record.id, record.name});
  return choices;
}

std::vector<Choice> catalog_choices(std::string_view key, const Catalogs& catalogs) {
  if (key == "grain") return choices_from(catalogs.grains);
  if (key == "cover") return choices_from(catalogs.covers);
  if (key == "vehicle") return choices_from(catalogs.vehicles);
  return {};
}

/// Fills the rows, one overload for each type of member.
struct RowWriter {
  std::vector<FieldRow>& rows;
  UnitSystem units;
  const Catalogs& catalogs;
  std::string prefix = {};
  std::string group = {};

  FieldRow& add(const Field& field, RowKind kind, std::string text, std::string_view part = "") const {
    const std::string key = part.empty() ? std::string{field.key} : fmt::format("{}.{}", field.key, part);
    const std::string label = part.empty() ? std::string{field.label} : fmt::format("{}, {}", field.label, part);
    rows.push_back({prefix + key, group, label, std::string{field.means}, kind, std::move(text), {}});
    return rows.back();
  }
  void operator()(const Field& field, double value) const { add(field, RowKind::number, text_for_typing(value, field.quantity, units)); }
  void operator()(const Field& field, int value) const { add(field, RowKind::number, fmt::format("{}", value)); }
  void operator()(const Field& field, bool value) const {
    add(field, RowKind::flag, value ? "yes" : "no").choices = {{"no", "no"}, {"yes", "yes"}};
  }
  void operator()(const Field& field, Angle value) const { add(field, RowKind::number, text_for_typing(value.as_degrees(), Quantity::angle, units)); }
  void operator()(const Field& field, Bearing value) const { add(field, RowKind::number, text_for_typing(value.as_degrees(), Quantity::bearing, units)); }
  void operator()(const Field& field, ItemId id) const { add(field, RowKind::item, fmt::format("{}", id.number)); }
  void operator()(const Field& field, SitePoint point) const {
    add(field, RowKind::number, text_for_typing(point.x, Quantity::length, units), "east");
    add(field, RowKind::number, text_for_typing(point.y, Quantity::length, units), "north");
  }
  void operator()(const Field& field, const std::string& words) const {
    auto choices = catalog_choices(field.key, catalogs);
    FieldRow& row = add(field, choices.empty() ? RowKind::words : RowKind::choice, words);
    row.choices = std::move(choices);
  }
  void operator()(const Field& field, const std::vector<ItemId>& list) const {
    std::string text;
    for (const ItemId id : list) text += fmt::format("{}{}", text.empty() ? "" : " ", id.number);
    add(field, RowKind::item_list, text);
  }
  void operator()(const Field& field, const SitePath& path) const {
    add(field, RowKind::line, fmt::format("{} points, {}", path.size(), text_of(length(path), Quantity::length, units)));
  }
  template <Enumeration Member>
  void operator()(const Field& field, Member value) const {
    const auto names = names_of(value);
    FieldRow& row = add(field, RowKind::choice, std::string{names[static_cast<std::size_t>(value)]});
    for (const std::string_view name : names) row.choices.push_back({std::string{name}, spoken(name)});
  }
  template <Group Member>
  void operator()(const Field& field, const Member& member) const {
    visit_fields(member, RowWriter{rows, units, catalogs, fmt::format("{}{}.", prefix, field.key), std::string{field.label}});
  }
};

/// Takes the text into the one member that the key names.
struct FieldReader {
  std::string_view key;
  std::string_view text;
  UnitSystem units;
  bool& found;
  std::optional<Problem>& problem;

  bool meant(const Field& field) const {
    if (key != field.key) return false;
    found = true;
    return true;
  }
  void refuse(const Field& field, std::string what, std::string mend) const {
    problem = Problem{std::move(what), std::string{field.label}, std::move(mend)};
  }

  std::optional<double> number(const Field& field, Quantity quantity) const {
    const auto parsed = parse_quantity(text, quantity, units);
    if (!parsed) {
      refuse(field, parsed.error().what, parsed.error().mend);
      return std::nullopt;
    }
    if (*parsed >= field.least && *parsed <= field.most) return *parsed;
    const bool low = *parsed < field.least;
    refuse(field, fmt::format("{} is too {}", text_of(*parsed, quantity, units), low ? "little" : "much"),
           fmt::format("give {} {}", low ? "at least" : "at most", text_of(low ? field.least : field.most, quantity, units)));
    return std::nullopt;
  }

  void operator()(const Field& field, double& value) const {
    if (meant(field)) value = number(field, field.quantity).value_or(value);
  }
  void operator()(const Field& field, int& value) const {
    if (!meant(field)) return;
    const auto typed = number(field, Quantity::count);
    if (typed && *typed != static_cast<int>(*typed)) return refuse(field, "it is no whole number", "type a whole number");
    if (typed) value = static_cast<int>(*typed);
  }
  void operator()(const Field& field, bool& value) const {
    if (!meant(field)) return;
    if (text != "yes" && text != "no") return refuse(field, "it is neither yes nor no", "choose yes or no");
    value = text == "yes";
  }
  void operator()(const Field& field, Angle& value) const {
    if (meant(field)) value = Angle::degrees(number(field, Quantity::angle).value_or(value.as_degrees()));
  }
  void operator()(const Field& field, Bearing& value) const {
    if (meant(field)) value = Bearing::degrees(number(field, Quantity::bearing).value_or(value.as_degrees()));
  }
  void operator()(const Field& field, std::string& words) const {
    if (meant(field)) words = text;
  }
  void operator()(const Field& field, SitePoint& point) const {
    coordinate(field, "east", point.x);
    coordinate(field, "north", point.y);
  }
  void coordinate(const Field& field, std::string_view part, double& value) const {
    if (key != fmt::format("{}.{}", field.key, part)) return;
    found = true;
    value = number(field, Quantity::length).value_or(value);
  }
  void operator()(const Field& field, ItemId& id) const {
    if (!meant(field)) return;
    int number_typed = -1;
    std::from_chars(text.data(), text.data() + text.size(), number_typed);
    if (number_typed < 0) return refuse(field, fmt::format("\"{}\" is no item", text), "choose an item");
    id = ItemId{number_typed};
  }
  void operator()(const Field& field, std::vector<ItemId>& list) const {
    if (!meant(field)) return;
    std::vector<ItemId> typed;
    std::istringstream words{std::string{text}};
    for (int one = 0; words >> one;) typed.push_back({one});
    if (!words.eof()) return refuse(field, fmt::format("\"{}\" is no list of items", text), "type item numbers parted by blanks");
    list = std::move(typed);
  }
  void operator()(const Field& field, SitePath&) const {
    if (meant(field)) refuse(field, "a line is not typed", "drag its corners on the plan");
  }
  template <Enumeration Member>
  void operator()(const Field& field, Member& value) const {
    if (!meant(field)) return;
    const auto names = names_of(value);
    const auto at = std::ranges::find(names, text);
    if (at == names.end()) return refuse(field, fmt::format("\"{}\" is no choice", text), "choose one of the list");
    value = static_cast<Member>(at - names.begin());
  }
  template <Group Member>
  void operator()(const Field& field, Member& member) const {
    const std::string front = fmt::format("{}.", field.key);
    if (key.starts_with(front)) visit_fields(member, FieldReader{key.substr(front.size()), text, units, found, problem});
  }
};

}  // namespace

std::vector<FieldRow> field_rows(const Thing& thing, UnitSystem units, const Catalogs& catalogs) {
  std::vector<FieldRow> rows;
  std::visit([&](const auto& kind) { visit_fields(kind, RowWriter{rows, units, catalogs}); }, thing);
  return rows;
}

tl::expected<Thing, Problem> with_field(Thing thing, std::string_view key, std::string_view text, UnitSystem units) {
  bool found = false;
  std::optional<Problem> problem;
  std::visit([&](auto& kind) { visit_fields(kind, FieldReader{key, text, units, found, problem}); }, thing);
  if (!found) problem = Problem{"there is no such field", std::string{key}, "name a field of this kind"};
  if (problem) return tl::unexpected{*problem};
  return thing;
}

}  // namespace yardwright::session
