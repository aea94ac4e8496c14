#include "geom/units/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

#include "geom/units/angle.hpp"

namespace yardwright {

namespace {

std::string_view trimmed(std::string_view text) {
  const auto is_space = [](char c) { return std::isspace(static_cast<unsigned char>(c)) != 0; };
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

bool same_letters(std::string_view a, std::string_view b) {
  return std::ranges::equal(a, b, [](unsigned char x, unsigned char y) { return std::tolower(x) == std::tolower(y); });
}

/// The number at the front of `text`, which is then left behind it. Commas between digits are thousands marks.
std::optional<double> take_number(std::string_view& text) {
  std::string digits;
  std::size_t used = 0;
  for (; used < text.size(); ++used) {
    const char c = text[used];
    const bool exponent = (c == 'e' || c == 'E') && used + 1 < text.size() && !digits.empty() &&
                          (std::isdigit(static_cast<unsigned char>(text[used + 1])) != 0 || text[used + 1] == '-');
    const bool sign = (c == '-' || c == '+') && (digits.empty() || digits.back() == 'e');
    if (c == ',') continue;
    if (std::isdigit(static_cast<unsigned char>(c)) == 0 && c != '.' && !sign && !exponent) break;
    if (c == '+' && digits.empty()) continue;
    digits += exponent ? 'e' : c;
  }
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value)) return std::nullopt;
  text.remove_prefix(used);
  text = trimmed(text);
  return value;
}

const Unit* unit_named(Quantity quantity, std::string_view suffix) {
  for (const Unit& unit : units_of(quantity)) {
    if (same_letters(unit.suffix, suffix)) return &unit;
  }
  return nullptr;
}

/// Marks and long words that people type for the units above.
std::string_view canonical_suffix(std::string_view typed) {
  struct Alias {
    std::string_view typed, suffix;
  };
  static constexpr Alias aliases[] = {
      {"'", "ft"},        {"feet", "ft"},    {"foot", "ft"},     {"\"", "in"},    {"inch", "in"},    {"inches", "in"},
      {"metre", "m"},     {"metres", "m"},   {"meter", "m"},     {"meters", "m"}, {"acre", "ac"},    {"acres", "ac"},
      {"bushel", "bu"},   {"bushels", "bu"}, {"degrees", "deg"}, {"°", "deg"},    {"hr", "h"},       {"hours", "h"},
      {"minutes", "min"}, {"bph", "bu/h"},   {"m²", "m2"},       {"m³", "m3"},    {"ft²", "ft2"},    {"ft³", "ft3"},
      {"litres", "l"},    {"liters", "l"},   {"bu/hr", "bu/h"},  {":1", ": 1"},   {"year", "years"}, {"yr", "years"}};
  for (const Alias& alias : aliases) {
    if (same_letters(alias.typed, typed)) return alias.suffix;
  }
  return typed;
}

Problem not_understood(std::string_view text, Quantity quantity) {
  if (quantity == Quantity::side_slope)
    return {fmt::format("\"{}\" is not understood", text), "", "type the run for one of rise: 4, or 4 : 1"};
  std::string choices;
  for (const Unit& unit : units_of(quantity)) {
    if (unit.suffix.empty()) continue;
    choices += (choices.empty() ? "" : ", ") + std::string{unit.suffix};
  }
  const std::string mend = choices.empty() ? "type a plain number" : "type a number with one of " + choices;
  return {fmt::format("\"{}\" is not understood", text), "", mend};
}

int decimals_for(double shown, Quantity quantity) {
  const double size = std::abs(shown);
  switch (quantity) {
    case Quantity::count: return 0;
    case Quantity::grain_volume:
    case Quantity::grain_flow:
    case Quantity::mass: return 0;
    case Quantity::years: return 0;
    case Quantity::side_slope:
    case Quantity::angle:
    case Quantity::bearing: return 1;
    default: return size >= 100 ? 0 : size >= 10 ? 1 : 2;
  }
}

int decimals_shown(double shown, Quantity quantity, UnitSystem system) {
  if (quantity == Quantity::length) return system == UnitSystem::us ? 1 : 2;
  if (quantity == Quantity::small_length) return system == UnitSystem::us ? 1 : 0;
  return decimals_for(shown, quantity);
}

std::string with_thousands(std::string number) {
  const std::size_t point = std::min(number.find('.'), number.size());
  const std::size_t first = number.starts_with('-') ? 1 : 0;
  for (std::size_t at = point; at > first + 3;) number.insert(at -= 3, ",");
  return number;
}

std::string_view shown_suffix(const Unit& unit) { return unit.suffix == "deg" ? "°" : unit.suffix; }

std::string joined(std::string number, const Unit& unit) {
  if (unit.suffix.empty()) return number;
  const bool tight = unit.suffix == "deg" || unit.suffix == "%";
  return number + (tight ? "" : " ") + std::string{shown_suffix(unit)};
}

std::string shortest_in(double si, double factor) {
  for (int digits = 1; digits <= 17; ++digits) {
    std::string text = fmt::format("{:.{}g}", si / factor, digits);
    double back = 0;
    std::from_chars(text.data(), text.data() + text.size(), back);
    if (back * factor == si) return fmt::format("{}", back);
  }
  return "";
}

}  // namespace

tl::expected<double, Problem> parse_quantity(std::string_view text, Quantity quantity, UnitSystem bare) {
  std::string_view rest = trimmed(text);
  const auto number = take_number(rest);
  if (!number) return tl::unexpected{not_understood(text, quantity)};
  if (quantity == Quantity::angle && rest.starts_with(':')) {
    rest = trimmed(rest.substr(1));
    const auto run = take_number(rest);
    if (!run || !rest.empty() || *run <= 0) return tl::unexpected{not_understood(text, quantity)};
    return Angle::of_slope(*number, *run).as_degrees();
  }
  if (rest.empty()) return *number * shown_unit(quantity, bare).factor;
  if (quantity == Quantity::length && (rest.front() == '\'' || rest.starts_with("ft")) && rest.size() > 2) {
    std::string_view inches = trimmed(rest.substr(rest.front() == '\'' ? 1 : 2));
    if (const auto more = take_number(inches); more && canonical_suffix(inches) == "in") {
      return (*number + *more / 12.0) * unit_named(quantity, "ft")->factor;
    }
  }
  const Unit* unit = unit_named(quantity, canonical_suffix(rest));
  if (unit == nullptr) return tl::unexpected{not_understood(text, quantity)};
  return *number * unit->factor;
}

std::string number_text(double value, int decimals) {
  std::string number = fmt::format("{:.{}f}", value, decimals);
  if (number.starts_with('-') && number.find_first_not_of("-0.") == std::string::npos) number.erase(0, 1);
  return with_thousands(number);
}

std::string text_of(double si, Quantity quantity, UnitSystem system) {
  const Unit& unit = shown_unit(quantity, system);
  const double shown = si / unit.factor;
  return joined(number_text(shown, decimals_shown(shown, quantity, system)), unit);
}

std::string text_in(double si, const Unit& unit) {
  const double shown = si / unit.factor;
  return joined(number_text(shown, decimals_for(shown, unit.quantity)), unit);
}

const Unit* unit_typed(std::string_view suffix, Quantity quantity) {
  return unit_named(quantity, canonical_suffix(trimmed(suffix)));
}

std::string signed_text_of(double si, Quantity quantity, UnitSystem system) {
  const std::string text = text_of(si, quantity, system);
  return text.starts_with('-') ? text : "+" + text;
}

std::string exact_number_of(double si, Quantity quantity, UnitSystem system) {
  return shortest_in(si, shown_unit(quantity, system).factor);
}

std::string exact_text_of(double si, Quantity quantity, UnitSystem system) {
  const std::string number = exact_number_of(si, quantity, system);
  if (!number.empty()) return joined(number, shown_unit(quantity, system));
  return exact_si_text_of(si, quantity);
}

std::string exact_si_text_of(double si, Quantity quantity) {
  return joined(shortest_in(si, 1), units_of(quantity).front());
}

}  // namespace yardwright
