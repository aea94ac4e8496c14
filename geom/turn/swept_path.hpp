// The ground that the bodies of a vehicle sweep over as it drives, as polygons. A body is cut at its axle: there its
// sides touch the edge of what it sweeps (the axle rolls along its unit), so each half between two stations is the
// hull of its two boxes, off by no more than the tolerance. Site frame, metres.
#pragma once

#include "geom/shape/polygon.hpp"
#include "geom/turn/body.hpp"

namespace yardwright::turn {

Region swept_area(const Driven& driven, const std::vector<Body>& bodies, double tolerance_m = 0.02);

}  // namespace yardwright::turn
