// What the schema and the format page say of a field's value: its quantity and its bounds in both unit systems.
#pragma once

#include <optional>
#include <string>
#include <type_traits>

#include "geom/site/field.hpp"

namespace yardwright {

/// The quantity of a member whose field may bound it; nothing for words, choices, places and references.
template <class Member>
std::optional<Quantity> bounded_quantity(const Field& field, const Member&) {
  if constexpr (std::is_same_v<Member, double>) return field.quantity;
  if constexpr (std::is_same_v<Member, int>) return Quantity::count;
  if constexpr (std::is_same_v<Member, Angle>) return Quantity::angle;
  if constexpr (std::is_same_v<Member, Bearing>) return Quantity::bearing;
  return std::nullopt;
}

/// "3.3 ft to 196.9 ft (1.00 m to 60.00 m)"; empty where the field has no bounds.
std::string bounds_words(const Field& field, Quantity quantity);

/// "ft or m", "deg"; empty for numbers without a unit.
std::string unit_words(Quantity quantity);

}  // namespace yardwright
