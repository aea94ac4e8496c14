#include "geom/drain/concentration.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/drain/raster.hpp"
#include "geom/drain/runoff.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

/// Falls 2 % to the south; a swale runs down it from a point on.
Site plane_with_swale(double from_north_m) {
  Site site;
  site.ground.levels = ground_of(60, 160, 1, [](SitePoint at) { return 100 + 0.02 * at.y; });
  Swale swale;
  swale.path = {{30.5, from_north_m}, {30.5, 0.5}};
  swale.start_depth_m = swale.end_depth_m = 0.4;
  swale.bottom_width_m = 2;
  swale.side_slope_ratio = 3;
  site.items.push_back({{1}, "Swale", 0, {}, swale});
  return site;
}

Concentration down_the_middle(const Site& site) {
  const DesignSurface surface = design_surface(site);
  const Flow flow = yard_flow(site, surface);
  const CoverMap covers = cover_map(site, shipped_catalogs(), flow.frame);
  return concentration_along(flow, covers, channel_map(site, surface),
                             flow_path(flow, cell_at(flow.frame, {30.5, 159.5})), 3 * 0.0254);
}

/// TR-55 eq. 3-4 (Manning): V = r^(2/3) s^(1/2) / n, bankfull, of a trapezoid.
double manning_m_per_s(double bottom_m, double side, double depth_m, double slope, double n) {
  const double area = (bottom_m + side * depth_m) * depth_m;
  const double wetted = bottom_m + 2 * depth_m * std::sqrt(1 + side * side);
  return std::pow(area / wetted, 2.0 / 3) * std::sqrt(slope) / n;
}

}  // namespace

TEST_CASE("Water runs in a sheet, shallow, then in the swale with its banks full", "[drain]") {
  const Concentration parts = down_the_middle(plane_with_swale(80.5));
  CHECK(parts.sheet_m == Approx(30));
  CHECK(parts.shallow_m == Approx(49).margin(2));
  CHECK(parts.channel_m == Approx(80).margin(2));
  CHECK(parts.channel_s == Approx(parts.channel_m / manning_m_per_s(2, 3, 0.4, 0.02, 0.03)).epsilon(0.03));
  CHECK(parts.sheet_m + parts.shallow_m + parts.channel_m == Approx(159).margin(1));
  CHECK(parts.total_s() == parts.sheet_s + parts.shallow_s + parts.channel_s);
}

TEST_CASE("Sheet flow ends where a swale begins", "[drain]") {
  const Concentration parts = down_the_middle(plane_with_swale(150.5));
  CHECK(parts.sheet_m == Approx(9).margin(2));
  CHECK(parts.shallow_m == 0);
}

TEST_CASE("Where no channel is drawn none is counted", "[drain]") {
  Site site = plane_with_swale(80.5);
  site.items.clear();
  CHECK(down_the_middle(site).channel_m == 0);
}

// TR-55 example 3-1, its channel: 27 sq ft, wetted 28.2 ft, slope 0.005, n 0.05: 2.05 ft/s (read second-hand). A trapezoid
// with that area and perimeter, and its speed by this channel's n of 0.03: 2.05 * 5 / 3.
TEST_CASE("A drawn channel is as fast as the published one but for its roughness", "[drain]") {
  constexpr double ft = 0.3048;
  const double area = 27, wetted = 28.2, side = 4, root = std::sqrt(1 + side * side);
  // bottom = wetted - 2 d root; (bottom + side d) d = area
  const double a = side - 2 * root, depth = (-wetted + std::sqrt(wetted * wetted + 4 * a * area)) / (2 * a);
  const DrawnChannel channel{(wetted - 2 * depth * root) * ft, side, depth * ft};
  CHECK(channel.speed_m_per_s(0.005) / ft == Approx(2.05 * 5 / 3).epsilon(0.005));
}
