#include "geom/io/field_bounds.hpp"

#include <fmt/format.h>

#include <cmath>

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

std::string bounds_in(const Field& field, Quantity quantity, UnitSystem system) {
  return fmt::format("{} to {}", text_of(field.least, quantity, system), text_of(field.most, quantity, system));
}

}  // namespace

std::string bounds_words(const Field& field, Quantity quantity) {
  if (!std::isfinite(field.least) || !std::isfinite(field.most)) return "";
  if (quantity == Quantity::length && field.least == -field.most && field.most >= 1e6) {
    return fmt::format("up to {} km either way", field.most / 1000);  // as feet to a tenth nobody reads it
  }
  const std::string us = bounds_in(field, quantity, UnitSystem::us);
  const std::string metric = bounds_in(field, quantity, UnitSystem::metric);
  return us == metric ? us : fmt::format("{} ({})", us, metric);
}

std::string unit_words(Quantity quantity) {
  if (quantity == Quantity::side_slope) return "run : 1";
  const std::string_view us = shown_unit(quantity, UnitSystem::us).suffix;
  const std::string_view metric = shown_unit(quantity, UnitSystem::metric).suffix;
  return us == metric ? std::string{us} : fmt::format("{} or {}", us, metric);
}

}  // namespace yardwright
