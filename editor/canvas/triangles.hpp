// Areas as triangles for a device that can only fill triangles. Rings are filled by the even-odd rule: the plane is
// cut at every corner's height into bands, and each band is filled between its edges two by two. Edges that cross
// inside a band (never in a simple polygon) fill a band's height wrongly, which no one can see.
#pragma once

#include <array>
#include <vector>

#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

using Triangle = std::array<DrawPoint, 3>;

std::vector<Triangle> triangles_of(const std::vector<std::vector<DrawPoint>>& rings);

/// One ring that turns the same way at every corner.
bool is_convex(const std::vector<DrawPoint>& ring);

}  // namespace yardwright::canvas
