// Lays a picture under the plan so that two points seen in it come to lie where they are known to lie, or as far
// apart as they are known to be. A picture is only moved, turned and scaled: never stretched or mirrored.
#pragma once

#include <tl/expected.hpp>

#include "geom/site/kinds/picture.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

/// Two points of a picture, where they lie on the site or where they ought to.
struct PointPair {
  SitePoint a, b;
  bool operator==(const PointPair&) const = default;
};

/// What lies at `from` comes to lie at `to`.
tl::expected<Picture, Problem> fitted(const Picture& picture, const PointPair& from, const PointPair& to);

/// Scaled about `seen.a` until both points are `distance_m` apart; the picture is not turned.
tl::expected<Picture, Problem> fitted_to_distance(const Picture& picture, const PointPair& seen, double distance_m);

/// Where a spot of the picture at `point` lies once the picture has been moved, turned and scaled.
SitePoint carried(SitePoint point, const Picture& before, const Picture& after);

/// Where a point of the picture lies: parts of its width from the left and of its height from the top, 0 to 1.
SitePoint place_in_picture(const Picture& picture, double right_ratio, double down_ratio);

}  // namespace yardwright
