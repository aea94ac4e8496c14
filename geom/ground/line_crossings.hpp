// What a line on the plan runs through, over or under, and at which levels: bins, buildings, pits, pipes, tunnels, drives,
// earthworks. Chainage in metres from the line's first point, levels in metres above the ground's datum.
#pragma once

#include <optional>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/shape/outline.hpp"

namespace yardwright {

struct LevelRange {
  double base_m = 0;
  double top_m = 0;
};

struct LineCrossing {
  ItemId item;
  double from_m = 0, to_m = 0;               ///< chainage at which the line enters and leaves it
  std::optional<LevelRange> at_from, at_to;  ///< both or neither; they differ where it slopes
  bool is_below = false;                     ///< in the ground: the hole of a pit, a culvert, a tunnel
  bool is_pit = false;                       ///< the hole of a pit
};

/// A part of a line, by chainage.
struct Stretch {
  double from_m = 0, to_m = 0;
};

/// Where the line is inside an outline, in order.
std::vector<Stretch> stretches_inside(const SitePath& path, const Outline& outline);

/// In order along the line. Covers, routes, spouts, pictures and dimensions are not told of, nor is the item `along`, whose
/// own path the line is, but where it has levels of its own (a culvert, a tunnel). A pit in a building is told of by itself.
std::vector<LineCrossing> line_crossings(const Site& site, const DesignSurface& surface, const SitePath& path,
                                         ItemId along = {});

}  // namespace yardwright
