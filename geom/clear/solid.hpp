// The yard as Clear sees it: every solid thing with its part in the rules, its outline and its box, made once.
// Distances are between walls, on the plan, in metres; they are negative by the depth of an overlap.
#pragma once

#include <optional>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/site/footprint.hpp"
#include "geom/site/rule.hpp"

namespace yardwright::clear {

/// What a thing is to the rules; a set of them is their sum.
using Parts = unsigned;
namespace part {
inline constexpr Parts bin = 1, leg = 2, dryer = 4, overhead_bin = 8, receiving = 16, truck_scale = 32,
                       farm_building = 64, control_room = 128, dwelling = 256, lp_tank = 512, ammonia_tank = 1024,
                       well = 2048, conveyor = 4096;
}

struct Solid {
  const Item* item = nullptr;
  Parts part = part::bin;
  Outline outline;
  Box box;
};

/// Nothing for things that no rule of Clear is about.
std::optional<Solid> solid_of(const Item& item);

struct Yard {
  const Site& site;
  const DesignSurface& surface;
  const RuleBook& rules;
  std::vector<Solid> solids;  ///< in the site's order; they point into `site`
  Polygon lot;
};

/// `site`, `surface` and `rules` must outlive it.
Yard yard_of(const Site& site, const DesignSurface& surface, const RuleBook& rules);

/// Never more than the distance of what the boxes hold.
double distance_m(const Box& a, const Box& b);

/// The nearest points of two convex outlines; where they overlap the distance is minus the shortest way out.
NearestPair separation(const Outline& a, const Outline& b);
/// The same of an outline and a line.
NearestPair separation(const Outline& a, const SitePath& line);

}  // namespace yardwright::clear
