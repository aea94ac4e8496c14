#include "geom/io/field_writer.hpp"

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

// A number that is this much longer in the file's unit than in SI was not typed in the file's unit.
constexpr std::size_t untyped_digits = 8;

}  // namespace

std::string quantity_json(double si, Quantity quantity, UnitSystem units) {
  if (si == 0) return "0";  // and never "-0"
  const std::string number = exact_number_of(si, quantity, units);
  const Unit& base = units_of(quantity).front();
  const std::string si_text = exact_si_text_of(si, quantity);
  const bool as_typed = number.size() < si_text.size() - base.suffix.size() + untyped_digits;
  return !number.empty() && (as_typed || base.suffix.empty()) ? number : json_text(si_text);
}

void FieldWriter::add(std::string_view key, std::string_view json) {
  if (!members_.empty()) members_ += ", ";
  members_ += json_text(key);
  members_ += ": ";
  members_ += json;
}

std::string FieldWriter::json_of(const Field&, SitePoint value) const {
  return "[" + quantity_json(value.x, Quantity::length, units_) + ", " +
         quantity_json(value.y, Quantity::length, units_) + "]";
}

}  // namespace yardwright
