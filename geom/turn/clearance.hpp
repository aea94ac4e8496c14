// How near the bodies of a vehicle come to a thing while it drives, where, and at which station. Exact between
// boxes and outlines; the tightest pose is refined between the driven stations.
#pragma once

#include "geom/shape/outline.hpp"
#include "geom/turn/body.hpp"

namespace yardwright::turn {

struct Clearance {
  double distance_m = 0;  ///< 0 where a body runs into it
  SitePoint on_vehicle;
  SitePoint on_obstacle;
  double station_m = 0;  ///< of the front axle
  std::size_t unit = 0;  ///< whose body is nearest
};

/// Bodies on a driven way, with the box around them stretch by stretch, so that what is far is passed over.
struct Passage {
  std::vector<Body> bodies;
  std::vector<Box> stretches;
};
Passage passage_of(const Driven& driven, std::vector<Body> bodies);

/// To an outline. Infinite where nothing was driven. The passage must be of the same drive.
Clearance least_clearance(const Driven& driven, const Passage& passage, const Outline& outline);
/// To a line, which has two sides: a fence, a lot edge.
Clearance least_clearance(const Driven& driven, const Passage& passage, const SitePath& line);

/// The ring that the bodies sweep about a point: nearest and farthest.
struct Ring {
  double inside_m = 0;
  double outer_m = 0;
};
Ring ring_about(const Driven& driven, const std::vector<Body>& bodies, SitePoint centre);

}  // namespace yardwright::turn
