// Free ground in front of what people work at: the fan and the unload tube of a bin, the end of a dryer, a boot in
// its pit. The room is a strip as wide as the rule book says, measured outward from the wall.
#pragma once

#include <limits>

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

inline constexpr double nothing_in_front = std::numeric_limits<double>::infinity();

/// How far a strip of a width runs from `face`, the way that it looks, until it meets the outline.
double free_depth_m(const Pose& face, double width_m, const Outline& outline);

/// Free ground that one thing asks for.
struct Room {
  const Rule* rule = nullptr;
  Pose face;
  double width_m = 0;

  /// As deep as the rule says.
  Polygon area() const;
};
/// Of a bin's fan and unload tube, of a dryer's end.
std::vector<Room> rooms_of(const Item& item, const RuleBook& rules);
/// Whether a thing would leave too little room where it stands in one.
bool fills_rooms(const Solid& solid);

std::vector<Check> room_checks(const RuleBook& rules);

}  // namespace yardwright::clear
