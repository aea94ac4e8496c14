#include "geom/grow/field_texts.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "geom/shape/path.hpp"
#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

class Collect {
 public:
  Collect(const Site& site, UnitSystem units) : site_{site}, units_{units} {}

  void operator()(const Field& field, double value) {
    put(field, fmt::format("{:.6f}", value), text_of(value, field.quantity, units_),
        exact_text_of(value, field.quantity, units_));
  }
  void operator()(const Field& field, int value) { put(field, std::to_string(value)); }
  void operator()(const Field& field, bool value) { put(field, value ? "yes" : "no"); }
  void operator()(const Field& field, const std::string& value) { put_text(field, value); }
  void operator()(const Field& field, Angle value) { degrees(field, value.as_degrees(), Quantity::angle); }
  void operator()(const Field& field, Bearing value) { degrees(field, value.as_degrees(), Quantity::bearing); }
  void operator()(const Field& field, ItemId value) { put(field, std::to_string(value.number), name(value)); }
  void operator()(const Field& field, const std::vector<ItemId>& value) {
    std::vector<std::string> names, numbers;
    for (const ItemId id : value) {
      names.push_back(name(id));
      numbers.push_back(std::to_string(id.number));
    }
    put(field, fmt::format("{}", fmt::join(numbers, " ")),
        names.empty() ? "nothing" : fmt::format("{}", fmt::join(names, ", ")));
  }
  void operator()(const Field& field, SitePoint value) {
    const auto m = [&](double metres) { return text_of(metres, Quantity::length, units_); };
    put(field, fmt::format("{:.6f} {:.6f}", value.x, value.y),
        fmt::format("{} east, {} north", m(value.x), m(value.y)));
    texts_.back().drawn = true;
  }
  void operator()(const Field& field, const SitePath& value) {
    std::string exact;
    for (const SitePoint point : value) exact += fmt::format("{:.6f} {:.6f} ", point.x, point.y);
    put(field, exact,
        fmt::format("{} corners over {}", value.size(), text_of(length(value), Quantity::length, units_)));
    texts_.back().drawn = true;
  }
  void operator()(const Field& field, const MassCurve& value) { put_text(field, text_of(value)); }
  void operator()(const Field& field, const RainTable& value) { put_text(field, text_of(value, units_)); }
  template <class Enum>
  requires std::is_enum_v<Enum>
  void operator()(const Field& field, Enum value) {
    put(field, std::string{names_of(value)[static_cast<std::size_t>(value)]});
  }
  template <Fielded Struct>
  void operator()(const Field& field, const Struct& value) {
    const std::string outer = within_;
    within_ += fmt::format("{}, ", field.label);
    visit_fields(value, *this);
    within_ = outer;
  }

  FieldTexts take() { return std::move(texts_); }

 private:
  void put(const Field& field, std::string exact, std::string shown, std::string full) {
    texts_.push_back({within_ + std::string{field.label}, std::move(exact), std::move(shown), std::move(full)});
  }
  void put(const Field& field, std::string exact, const std::string& shown) {
    put(field, std::move(exact), shown, shown);
  }
  void put(const Field& field, const std::string& text) { put(field, text, text, text); }
  void put_text(const Field& field, const std::string& text) { put(field, text.empty() ? "nothing" : text); }
  void degrees(const Field& field, double value, Quantity quantity) {
    put(field, fmt::format("{:.6f}", value), text_of(value, quantity, units_), exact_text_of(value, quantity, units_));
  }

  std::string name(ItemId id) const {
    if (!id) return "nothing";
    const Item* item = find(site_, id);
    return item == nullptr ? fmt::format("item {}", id.number) : title_of(*item);
  }

  const Site& site_;
  UnitSystem units_;
  std::string within_;
  FieldTexts texts_;
};

template <class Struct>
FieldTexts collected(const Struct& value, const Site& site, UnitSystem units) {
  Collect collect{site, units};
  visit_fields(value, collect);
  return collect.take();
}

}  // namespace

FieldTexts field_texts(const Thing& thing, const Site& site, UnitSystem units) {
  return std::visit([&](const auto& kind) { return collected(kind, site, units); }, thing);
}

FieldTexts field_texts(const Storm& storm, const Site& site, UnitSystem units) { return collected(storm, site, units); }

FieldTexts field_texts(const Ground& ground, const Site& site, UnitSystem units) {
  return collected(ground, site, units);
}

}  // namespace yardwright::grow
