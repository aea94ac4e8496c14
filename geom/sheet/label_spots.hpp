// The places that a label may take, best first: in or around a thing, beside a point, along a line.
#pragma once

#include "geom/sheet/label.hpp"

namespace yardwright {

/// What a label stands in or around: half of its width and height on the site; a round one has its corners cut.
struct Around {
  SitePoint centre;
  double half_width_m = 0, half_height_m = 0;
  bool round = false;
};

enum class Prefer : std::uint8_t { inside, below, beside };

/// Inside in letters as large as fit (where preferred), then around it, then ever farther away with a leader.
void add_spots_around(Label& label, const Around& thing, Prefer prefer, double metres_per_mm);

/// Around a sign of a radius on the paper, then farther away with a leader.
void add_spots_beside(Label& label, SitePoint at, double radius_mm);

/// Turned along a stretch of a line (parts of its length), `set_in` on the line itself, else on either side of it.
struct AlongLine {
  bool set_in = false;
  int places = 9;
  double from = 0, to = 1;
};
void add_spots_along(Label& label, const SitePath& path, const AlongLine& how, double metres_per_mm);

/// Within an area, near its middle first; where it is too small for the words, around it.
void add_spots_within(Label& label, const Polygon& area, double metres_per_mm);

}  // namespace yardwright
