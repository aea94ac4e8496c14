#include "geom/drain/outlines.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/drain/raster.hpp"
#include "geom/shape/path.hpp"
#include "geom/shape/polygon.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048;

/// Even-odd.
bool lies_within(const std::vector<SitePath>& rings, SitePoint point) {
  int around = 0;
  for (const SitePath& ring : rings) around += contains(Polygon{ring, {}}, point) ? 1 : 0;
  return around % 2 == 1;
}

double distance_to(const std::vector<SitePath>& rings, SitePoint point) {
  double least_m = 1e9;
  for (const SitePath& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const SitePoint a = ring[i], b = ring[(i + 1) % ring.size()];
      least_m = std::min(least_m, distance(point, nearest_on_segment(a, b, point).point));
    }
  }
  return least_m;
}

/// Falls at 2 % towards its middle, 0.5 ft under level 0.
LevelGrid cone(double cell_m) {
  const int wide = static_cast<int>(80 * ft / cell_m);
  const GridFrame frame{{0, 0}, cell_m, wide, wide};
  const SitePoint middle{wide * cell_m / 2, wide * cell_m / 2};
  std::vector<float> levels;
  for (std::size_t cell = 0; cell < frame.cells(); ++cell) {
    const double out_m = distance(frame.centre(frame.cell_at_offset(cell)), middle);
    levels.push_back(static_cast<float>(0.02 * out_m - 0.5 * ft));
  }
  return {frame, std::move(levels)};
}

}  // namespace

// A cone of slope s filled to a depth d has the radius d / s: 0.5 ft at 2 % is 25 ft. The slope is not straight along
// every cell edge, so the shore is a few millimetres off.
TEST_CASE("The shore of a conical pond 0.5 ft deep at 2 percent is a circle of 25 ft", "[drain]") {
  const Flow flow = flow_over(cone(1 * ft));
  std::vector<Cell> wet;
  for (std::size_t cell = 0; cell < flow.frame.cells(); ++cell) {
    if (flow.level_m[cell] < 0) wet.push_back(static_cast<Cell>(cell));
  }
  const auto rings = shore_of(flow, wet, 0);
  REQUIRE(rings.size() == 1);
  const SitePoint middle{40 * ft, 40 * ft};
  for (const SitePoint point : rings[0]) CHECK(distance(point, middle) == Approx(25 * ft).margin(0.03));
}

TEST_CASE("On rough ground a shore holds every cell that stands under water and no other", "[drain]") {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    INFO("seed " << seed);
    const Flow flow = flow_over(rough_ground(60, 50, seed));
    const auto cells = cells_by_depression(flow);
    for (std::size_t number = 0; number < cells.size(); ++number) {
      const double spill_m = flow.depressions[number].spill_level_m;
      const auto rings = shore_of(flow, cells[number], spill_m);
      for (std::size_t cell = 0; cell < flow.frame.cells(); ++cell) {
        const double under_m = spill_m - static_cast<double>(flow.level_m[cell]);
        if (under_m == 0) continue;  // at the water's level: neither
        const bool wet = flow.depression[cell] == static_cast<std::int32_t>(number) && under_m > 0;
        const SitePoint centre = flow.frame.centre(flow.frame.cell_at_offset(cell));
        if (lies_within(rings, centre) != wet) REQUIRE(distance_to(rings, centre) < 1e-3 * flow.frame.cell_m);
      }
    }
  }
}

TEST_CASE("No cells and dry cells have no shore", "[drain]") {
  const Flow flow = flow_over(terrain({"3 3 3", "3 2 3", "3 3 3"}));
  CHECK(shore_of(flow, {}, 3).empty());
  const std::vector<Cell> middle{4};
  CHECK(shore_of(flow, middle, 1.5).empty());
  CHECK(shore_of(flow, middle, 3).size() == 1);
}

TEST_CASE("The steps of a slanting border are smoothed away, and none of it moves by more than a cell and a half",
          "[drain]") {
  const GridFrame frame{{0, 0}, 1, 60, 60};
  std::vector<Cell> cells;
  for (std::size_t cell = 0; cell < frame.cells(); ++cell) {
    const SitePoint centre = frame.centre(frame.cell_at_offset(cell));
    if (centre.y < 0.5 * centre.x + 10) cells.push_back(static_cast<Cell>(cell));
  }
  const auto rings = smooth_rings_around(frame, cells);
  REQUIRE(rings.size() == 1);
  const auto stepped = rings_around(frame, cells);
  for (const SitePoint point : rings[0]) {
    CHECK(distance_to(stepped, point) < 1.5);
    if (point.x > 5 && point.x < 55 && point.y > 5)
      CHECK(std::abs(point.y - 0.5 * point.x - 10) / std::hypot(1, 0.5) < 0.35);  // a step is 0.7 deep
  }
}

TEST_CASE("A smoothed outline keeps the area of what it goes round, and one cell is still seen", "[drain]") {
  const GridFrame frame{{0, 0}, 1, 60, 60};
  const std::vector<Cell> disc = cells_in(frame, Outline{Disc{{30, 30}, 20}});
  const auto rings = smooth_rings_around(frame, disc);
  REQUIRE(rings.size() == 1);
  CHECK(area_m2({rings[0], {}}) == Approx(static_cast<double>(disc.size())).epsilon(0.01));
  const std::vector<Cell> one{100};
  REQUIRE(smooth_rings_around(frame, one).size() == 1);
  CHECK(area_m2({smooth_rings_around(frame, one)[0], {}}) == Approx(0.5));
  CHECK(smooth_rings_around(frame, {}).empty());
}
