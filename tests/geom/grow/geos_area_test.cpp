// The areas of the region, joined and taken away by another library: GEOS, through GDAL.
#include <ogr_api.h>
#include <ogr_geometry.h>

#include <memory>

#include "tests/geom/grow/grow_yard.hpp"
#include "tests/scenes/crowded_yard.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

using Geometry = std::unique_ptr<OGRGeometry>;

void add_ring(OGRPolygon& to, const std::vector<SitePoint>& ring) {
  OGRLinearRing line;
  for (const SitePoint& p : ring) line.addPoint(p.x, p.y);
  line.closeRings();
  to.addRing(&line);
}

OGRPolygon as_ogr(const Polygon& polygon) {
  OGRPolygon out;
  add_ring(out, polygon.outer);
  for (const auto& hole : polygon.holes) add_ring(out, hole);
  return out;
}

double area_by_geos_m2(const Lot& lot, const KeepOffs& reasons) {
  OGRMultiPolygon pieces;
  for (const KeepOff& reason : reasons) {
    for (const Polygon& piece : reason.area) {
      const OGRPolygon one = as_ogr(piece);
      pieces.addGeometry(&one);
    }
  }
  const Geometry off{pieces.UnionCascaded()};
  const OGRPolygon whole = as_ogr({lot.corners, {}});
  const Geometry left{whole.Difference(off.get())};
  return OGR_G_Area(OGRGeometry::ToHandle(left.get()));
}

}  // namespace

TEST_CASE("GEOS finds the same area of allowed ground") {
  for (unsigned seed = 1; seed <= 60; ++seed) {
    const GrowYard yard{scenes::crowded_yard(seed)};
    const AllowedRegion region =
        allowed_region(yard.with(Bin{.diameter_m = 4.0 + seed % 6, .eave_height_m = 4.0 + seed % 5}));
    INFO("seed " << seed);
    CHECK(area_m2(region.free) == Approx(area_by_geos_m2(yard.site.lot, region.reasons)).margin(0.01));
  }
}
