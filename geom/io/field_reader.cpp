#include "geom/io/field_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geom/io/nearest_word.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr std::size_t longest_quantity_text = 60;
constexpr double farthest_m = 1e6;  // of a place from the origin: a site is local
constexpr double greatest_id = 1e9;

std::string unit_example(Quantity quantity, UnitSystem units) {
  const std::string_view suffix = shown_unit(quantity, units).suffix;
  if (suffix.empty()) return "write a plain number";
  if (quantity == Quantity::side_slope) return "write the run for one of rise: 4, or \"4 : 1\"";
  return fmt::format("write a number in {0}, or text with a unit: \"12 {0}\"", suffix);
}

std::string allowed_words(const Field& field, Quantity quantity, UnitSystem units) {
  const bool bounded_below = std::isfinite(field.least), bounded_above = std::isfinite(field.most);
  const std::string least = text_of(field.least, quantity, units), most = text_of(field.most, quantity, units);
  if (bounded_below && bounded_above) return fmt::format("give {} to {}", least, most);
  return bounded_below ? "give at least " + least : "give at most " + most;
}

}  // namespace

std::string where_words(const FilePart& part, int line, std::string_view field) {
  std::string words = fmt::format("{}, line {}", part.file, line);
  if (!part.part.empty()) words += ", " + part.part;
  if (!field.empty()) words += fmt::format(", {}", field);
  return words;
}

FieldReader::FieldReader(const JsonValue& object, FilePart part, UnitSystem units, Problems& problems)
    : object_{object}, part_{std::move(part)}, units_{units}, problems_{problems} {
  if (object.object() == nullptr) {
    note(object.line, "", fmt::format("is {}", sort_of(object)), "write an object: {\"field\": value, ...}");
  }
}

const JsonValue* FieldReader::take(std::string_view key) {
  known_.push_back(key);
  return member(object_, key);
}

void FieldReader::refuse_unknown() {
  if (object_.object() == nullptr) return;
  for (const auto& [key, value] : *object_.object()) {
    if (std::ranges::find(known_, key) != known_.end()) continue;
    note(value.line, key, "is no field that is known here", suggestion(key, known_));
  }
}

void FieldReader::note(int line, std::string_view field, std::string what, std::string mend) {
  problems_.push_back({std::move(what), where_words(part_, line, field), std::move(mend)});
}

void FieldReader::read(const Field& field, const JsonValue& value, double& into) {
  if (const auto si = quantity_in(field, value, field.quantity)) into = *si;
}

void FieldReader::read(const Field& field, const JsonValue& value, Angle& into) {
  if (const auto degrees = quantity_in(field, value, Quantity::angle)) into = Angle::degrees(*degrees);
}

void FieldReader::read(const Field& field, const JsonValue& value, Bearing& into) {
  if (const auto degrees = quantity_in(field, value, Quantity::bearing)) into = Bearing::degrees(*degrees);
}

void FieldReader::read(const Field& field, const JsonValue& value, int& into) {
  const double* number = value.number();
  if (number == nullptr || *number != std::floor(*number)) return wrong_sort(field, value, "write a whole number");
  Field whole = field;
  whole.least = std::max(field.least, -greatest_id);
  whole.most = std::min(field.most, greatest_id);
  if (within(whole, value, Quantity::count, *number)) into = static_cast<int>(*number);
}

void FieldReader::read(const Field& field, const JsonValue& value, bool& into) {
  const bool* given = value.yes_or_no();
  if (given == nullptr) return wrong_sort(field, value, "write true or false");
  into = *given;
}

void FieldReader::read(const Field& field, const JsonValue& value, std::string& into) {
  const std::string* given = value.text();
  if (given == nullptr) return wrong_sort(field, value, "write text in quotes");
  into = *given;
}

/// null names nothing, as the default does.
void FieldReader::read(const Field& field, const JsonValue& value, ItemId& into) {
  if (value.is_null()) return;
  Field id = field;
  id.least = 1;
  read(id, value, into.number);
}

void FieldReader::read(const Field& field, const JsonValue& value, SitePoint& into) {
  const JsonArray* pair = value.array();
  if (pair == nullptr || pair->size() != 2) return wrong_sort(field, value, "write a point as [east, north]");
  Field part{field.key, field.label, field.means, Quantity::length, -farthest_m, farthest_m};
  read(part, (*pair)[0], into.x);
  read(part, (*pair)[1], into.y);
}

void FieldReader::read(const Field& field, const JsonValue& value, MassCurve& into) {
  const std::string* given = value.text();
  if (given == nullptr) return wrong_sort(field, value, "write text in quotes: \"0 0, 6h 0.08, 12h 0.66, 24h 1\"");
  auto curve = parse_mass_curve(*given);
  if (!curve) return note(value.line, field.key, curve.error().what, curve.error().mend);
  into = std::move(*curve);
}

void FieldReader::read(const Field& field, const JsonValue& value, RainTable& into) {
  const std::string* given = value.text();
  if (given == nullptr) return wrong_sort(field, value, "write text in quotes: \"2 3.0in, 10 4.5in, 100 7.1in\"");
  auto table = parse_rain_table(*given, units_);
  if (!table) return note(value.line, field.key, table.error().what, table.error().mend);
  into = std::move(*table);
}

std::optional<double> FieldReader::quantity_in(const Field& field, const JsonValue& value, Quantity quantity) {
  std::optional<double> si;
  if (const double* number = value.number()) si = *number * shown_unit(quantity, units_).factor;
  if (const std::string* text = value.text(); text != nullptr && text->size() <= longest_quantity_text) {
    const auto parsed = parse_quantity(*text, quantity, units_);
    if (!parsed) {
      note(value.line, field.key, parsed.error().what, parsed.error().mend);
      return std::nullopt;
    }
    si = *parsed;
  }
  if (!si)
    wrong_sort(field, value, unit_example(quantity, units_));
  else if (!within(field, value, quantity, *si))
    return std::nullopt;
  return si;
}

bool FieldReader::within(const Field& field, const JsonValue& value, Quantity quantity, double si) {
  if (std::isfinite(si) && si >= field.least && si <= field.most) return true;
  const bool small = si < field.least;
  const Unit& unit = shown_unit(quantity, units_);
  const std::string shown =
      std::abs(si) < 1e15 ? text_of(si, quantity, units_) : fmt::format("{:g} {}", si / unit.factor, unit.suffix);
  note(value.line, field.key, fmt::format("{} is too {}", shown, small ? "small" : "large"),
       allowed_words(field, quantity, units_));
  return false;
}

std::optional<std::size_t> FieldReader::index_of_name(const Field& field, const JsonValue& value,
                                                      std::span<const std::string_view> names) {
  const std::string* text = value.text();
  const auto found = text == nullptr ? names.end() : std::ranges::find(names, *text);
  if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
  if (text == nullptr)
    wrong_sort(field, value, suggestion("", names));
  else
    note(value.line, field.key, fmt::format("{} is no choice", json_text(*text)), suggestion(*text, names));
  return std::nullopt;
}

const JsonArray* FieldReader::list(const Field& field, const JsonValue& value) {
  if (value.array() == nullptr) wrong_sort(field, value, "write a list: [ ..., ... ]");
  return value.array();
}

void FieldReader::wrong_sort(const Field& field, const JsonValue& value, std::string mend) {
  const std::string given = value.number() != nullptr ? fmt::format("{:g} will not do", *value.number())
                                                      : fmt::format("{} will not do", sort_of(value));
  note(value.line, field.key, given, std::move(mend));
}

void FieldReader::missing(const Field& field) {
  if (object_.object() != nullptr) note(object_.line, field.key, "is missing", fmt::format("give the {}", field.label));
}

std::string FieldReader::inner_part(std::string_view key) const {
  return part_.part.empty() ? std::string{key} : fmt::format("{}, {}", part_.part, key);
}

}  // namespace yardwright
