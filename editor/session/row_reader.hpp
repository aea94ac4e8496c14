// Takes typed text into one field of any struct that has visit_fields. Used by the .cpp files of this room.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <sstream>

#include "editor/session/row_writer.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/units/text.hpp"

namespace yardwright::session {

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
           fmt::format("give {} {}", low ? "at least" : "at most",
                       text_of(low ? field.least : field.most, quantity, units)));
    return std::nullopt;
  }

  void operator()(const Field& field, double& value) const {
    if (meant(field)) value = number(field, field.quantity).value_or(value);
  }
  void operator()(const Field& field, int& value) const {
    if (!meant(field)) return;
    const auto typed = number(field, Quantity::count);
    if (typed && *typed != static_cast<int>(*typed))
      return refuse(field, "it is no whole number", "type a whole number");
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
  void operator()(const Field& field, MassCurve& curve) const {
    if (!meant(field)) return;
    auto typed = parse_mass_curve(text);
    if (!typed) return refuse(field, typed.error().what, typed.error().mend);
    curve = std::move(*typed);
  }
  void operator()(const Field& field, RainTable& table) const {
    if (!meant(field)) return;
    auto typed = parse_rain_table(text, units);
    if (!typed) return refuse(field, typed.error().what, typed.error().mend);
    table = std::move(*typed);
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
    if (!words.eof())
      return refuse(field, fmt::format("\"{}\" is no list of items", text), "type item numbers parted by blanks");
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
    if (key.starts_with(front))
      visit_fields(member, FieldReader{key.substr(front.size()), text, units, found, problem});
  }
};

/// The struct with one field typed anew.
template <class Fields>
tl::expected<Fields, Problem> with_typed(Fields fields, std::string_view key, std::string_view text, UnitSystem units) {
  bool found = false;
  std::optional<Problem> problem;
  visit_fields(fields, FieldReader{key, text, units, found, problem});
  if (!found) problem = Problem{"there is no such field", std::string{key}, "name a field of this kind"};
  if (problem) return tl::unexpected{*problem};
  return fields;
}

}  // namespace yardwright::session
