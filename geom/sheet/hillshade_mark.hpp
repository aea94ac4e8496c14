// Light and shade of the ground as a picture under the plan: nothing over level ground, the brown of earth where it turns from the
// light, white where it faces it, so that the paper's colour stays.
#pragma once

#include <optional>

#include "geom/shape/grid.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright {

/// In site metres; nothing for an empty grid.
std::optional<PictureMark> hillshade_mark(const LevelGrid& ground);

}  // namespace yardwright
