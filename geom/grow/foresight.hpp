// Whether what is planned spoils the yard's growth: takes the last outlet, the last place for the next thing, the last way of
// trucks to the dump, or stands on ground that a later phase needs. Who does is named. docs/methods/grow.md
#pragma once

#include "geom/grow/allowed_region.hpp"
#include "geom/grow/harm.hpp"

namespace yardwright::grow {

/// What Grow knows of a yard when it looks ahead.
struct Outlook {
  CheckedYard yard;
  const Thing& sought;
  const AllowedRegion* region;  ///< of what is sought; null where no room could be sought
  std::size_t spots = 0;        ///< told of it
  const std::vector<Item>& later;
};

/// Without the mends that move a culprit (move_culprit.hpp). A rule that could be asked and is broken by nothing passes.
Findings foresee(const Outlook& outlook);

/// Whether what is sought has a place with some things gone. Ways are driven and water flows anew.
bool has_room_without(const Outlook& outlook, const std::vector<ItemId>& gone);

}  // namespace yardwright::grow
