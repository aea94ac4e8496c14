// The scales at which plans are drawn: engineering scales in the US (1 in = 10, 20, ... ft), ratios in metric units.
// A scale is kept as its ratio: metres on the ground for a metre on the paper.
// Source: the usual engineer's and metric scale rules; common practice, no source.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "geom/units/problem.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

/// Largest drawing first.
std::span<const double> standard_scale_ratios(UnitSystem units);

/// The largest standard scale at which a ground of this size fits on a paper window of that size; the smallest
/// standard scale, doubled until it fits, for a ground beyond all of them.
double scale_ratio_that_fits(double ground_width_m, double ground_height_m, double paper_width_mm,
                             double paper_height_mm, UnitSystem units);

/// "1 in = 40 ft" or "1:500".
std::string scale_words(double ratio, UnitSystem units);

/// "1in=40ft", "1 in = 40 ft", "1:500" or "1/500".
tl::expected<double, Problem> parse_scale(std::string_view text);

}  // namespace yardwright
