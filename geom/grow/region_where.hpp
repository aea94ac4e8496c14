// Where something holds on the plan, found by sampling: marching squares, with every crossing between two samples narrowed
// down by halving. What is narrower than the samples lie apart can be missed, and between two crossings the edge is
// straight: it is off by no more than a sample.
#pragma once

#include <functional>

#include "geom/shape/grid.hpp"
#include "geom/shape/polygon.hpp"

namespace yardwright::grow {

using Holds = std::function<bool(SitePoint)>;

/// Samples over a box, apart by no more than `apart_m`.
GridFrame samples_over(const Box& box, double apart_m);

/// Asked at the centres of the frame's cells and between them; beyond the frame it is not asked. `holds` is called by
/// several threads at once.
Region region_where(const GridFrame& frame, const Holds& holds);

/// Disjoint rings, outer ones and holes as they come, made polygons.
Region nested(std::vector<SitePath> rings);

}  // namespace yardwright::grow
