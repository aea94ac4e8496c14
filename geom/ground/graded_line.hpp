// Lines across a slope that fall evenly as they go, as a diversion is laid out: close to a contour, and turned off it just so
// far that water runs along. Metres; docs/methods/ground.md
#pragma once

#include <functional>
#include <optional>

#include "geom/shape/grid.hpp"

namespace yardwright {

/// How the ground rises at a place, east and north, in metres for each metre: the plane through the levels of a ring around
/// it, so that a rough cell does not turn a line.
SiteVector rise_at(const LevelGrid& ground, SitePoint at, double around_m);

enum class Hand : std::uint8_t { left, right };  ///< of one who looks down the slope
constexpr Hand other(Hand hand) { return hand == Hand::left ? Hand::right : Hand::left; }

struct LineAcross {
  Hand hand = Hand::right;
  double fall_ratio = 0.005;  ///< for one of run; it rises where negative
  double step_m = 1;
  double around_m = 5;  ///< see rise_at
};

/// From a point as long as `goes_on` says so of the next; ends where the ground is flatter than the line is to fall.
SitePath line_across(const LevelGrid& ground, SitePoint from, const LineAcross& line,
                     const std::function<bool(SitePoint)>& goes_on);

/// Straight down the slope, likewise; ends where the ground is level.
SitePath line_down(const LevelGrid& ground, SitePoint from, const LineAcross& line,
                   const std::function<bool(SitePoint)>& goes_on);

}  // namespace yardwright
