// Where a leg fills a newcomer: near enough for the slope that its grain needs, with a clear way through the air. Judged
// as geom/reach judges a spout, at samples a metre apart (region_where.hpp).
#pragma once

#include "geom/grow/keep_off.hpp"
#include "geom/reach/spout_line.hpp"

namespace yardwright::grow {

/// What stands in the way of a spout to some places.
struct Shadow {
  ItemId item;
  Region area;
};

struct LegReach {
  ItemId leg;
  Region reached;  ///< by slope
  std::vector<Shadow> shadows;

  Region clear() const;  ///< reached, and out of every shadow
};

/// For every leg that has an outlet left.
std::vector<LegReach> leg_reaches(const Newcomer& newcomer);

/// Why not elsewhere; nothing where the newcomer is filled by no spout or no leg stands in the yard.
KeepOffs off_reach(const Newcomer& newcomer, const std::vector<LegReach>& reaches);

/// The leg that would fill it there with the steepest spout; nothing where none does.
std::optional<ItemId> leg_for(const Newcomer& newcomer, SitePoint place);

/// The spout, what it carries, and the rule for its slope.
reach::SpoutLine spout_to(const Newcomer& newcomer, const Leg& leg, SitePoint place);
GrainState grain_state(const Newcomer& newcomer);
const Rule& slope_rule(const Newcomer& newcomer);

}  // namespace yardwright::grow
