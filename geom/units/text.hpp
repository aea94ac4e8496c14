// Quantities as people type and read them. "36ft", "36 ft", "36' 6\"", "11m", "9:12" and "2.5%" are all
// understood; a bare number is taken in the unit that the system shows.
#pragma once

#include <string>
#include <string_view>

#include "geom/units/problem.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

/// Text to the SI value. The Problem's `where` is left for the caller, who knows the field.
tl::expected<double, Problem> parse_quantity(std::string_view text, Quantity quantity, UnitSystem bare);

/// For reading: rounded to what matters on a yard, with its unit: "17.4 ft", "29.2 deg", "21,700 bu".
std::string text_of(double si, Quantity quantity, UnitSystem system);

/// A number with marks at its thousands: "21,700".
std::string number_text(double value, int decimals);

/// As text_of, in a unit that the caller chooses: "12.3 yd3".
std::string text_in(double si, const Unit& unit);

/// The unit of a quantity that is typed so, by its suffix or a longer word; null where none is.
const Unit* unit_typed(std::string_view suffix, Quantity quantity);

/// As text_of, with a sign in front: "+1.9 ft".
std::string signed_text_of(double si, Quantity quantity, UnitSystem system);

/// For editing: the fewest digits that parse back to exactly `si`, with the unit; in the SI base unit where no
/// decimal in the shown unit does.
std::string exact_text_of(double si, Quantity quantity, UnitSystem system);

/// The number of `exact_text_of` alone, where the shown unit can hold `si` exactly; else nothing. For files.
std::string exact_number_of(double si, Quantity quantity, UnitSystem system);

/// The fewest digits that parse back to exactly `si` in the SI base unit, with that unit: "8.53 m".
std::string exact_si_text_of(double si, Quantity quantity);

}  // namespace yardwright
