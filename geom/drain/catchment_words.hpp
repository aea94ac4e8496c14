// A catchment's figures in words: the way of its farthest water by its segments, and what ground makes its curve number.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "geom/drain/concentration.hpp"
#include "geom/drain/runoff.hpp"

namespace yardwright::drain {

/// What a segment's speed comes from: "n 0.15, two-year rain 3 in", "unpaved", "6.6 ft wide at its bottom, sides 3 : 1, ...".
std::string ground_words(const TravelSegment& segment, UnitSystem units);

/// "0.108 h"
std::string travel_hours_words(double time_s);

/// "310 ft east, 520 ft north", of the site's origin.
std::string place_words(SitePoint place, UnitSystem units);

/// The way as a whole, with its ends, then each segment; nothing where there is no way.
std::vector<std::string> concentration_words(const Concentration& concentration, UnitSystem units);

/// "curve number 84: 1.9 ac farmstead, soil C, 82; 0.2 ac gravel yard or drive, soil C, 89"
std::string curve_number_words(std::span<const CoverPart> parts, UnitSystem units);

/// "1.90 ac"; a small one in square feet or metres.
std::string area_words(double area_m2, UnitSystem units);

/// "C"
std::string soil_words(SoilGroup soil);

}  // namespace yardwright::drain
