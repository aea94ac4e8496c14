// Where new earth may lie: on the lot and on known ground, clear of what stands, of pits and of where trucks drive.
#pragma once

#include <vector>

#include "geom/shape/grid.hpp"
#include "geom/shape/outline.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

class OpenGround {
 public:
  OpenGround(const Site& site, const GridFrame& ground);
  /// With nothing nearer than `clear_m`.
  bool holds(SitePoint at, double clear_m) const;

 private:
  /// A drive, or the way of a route's truck.
  struct DrivenWay {
    SitePath path;
    double half_width_m = 0;
  };
  void keep_off(const Thing& thing);
  bool is_on_lot(SitePoint at) const { return lot_.outer.size() < 3 || contains(lot_, at); }

  Polygon lot_;
  Box known_;
  std::vector<Outline> standing_;
  std::vector<DrivenWay> driven_;
};

}  // namespace yardwright::drain
