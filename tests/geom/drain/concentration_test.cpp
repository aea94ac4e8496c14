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
  CHECK(parts.length_m(Travel::sheet) == Approx(30));
  CHECK(parts.length_m(Travel::shallow) == Approx(49).margin(2));
  CHECK(parts.length_m(Travel::channel) == Approx(80).margin(2));
  CHECK(parts.time_s(Travel::channel) ==
        Approx(parts.length_m(Travel::channel) / manning_m_per_s(2, 3, 0.4, 0.02, 0.03)).epsilon(0.03));
  CHECK(parts.length_m(Travel::sheet) + parts.length_m(Travel::shallow) + parts.length_m(Travel::channel) ==
        Approx(159).margin(1));
  CHECK(parts.total_s() ==
        Approx(parts.time_s(Travel::sheet) + parts.time_s(Travel::shallow) + parts.time_s(Travel::channel)));
}

TEST_CASE("Sheet flow ends where a swale begins", "[drain]") {
  const Concentration parts = down_the_middle(plane_with_swale(150.5));
  CHECK(parts.length_m(Travel::sheet) == Approx(9).margin(2));
  CHECK(parts.length_m(Travel::shallow) == 0);
}

TEST_CASE("Where no channel is drawn none is counted", "[drain]") {
  Site site = plane_with_swale(80.5);
  site.items.clear();
  CHECK(down_the_middle(site).length_m(Travel::channel) == 0);
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

// TR-55 example 3-1 (worked figures from memory, its inputs and equations read second-hand): sheet 100 ft of dense grass, n
// 0.24, slope 0.01, two-year rain 3.6 in: 0.30 h; shallow 1,400 ft unpaved, slope 0.01: 1.6 ft/s, 0.24 h; channel 7,300 ft,
// 27 sq ft, wetted 28.2 ft, slope 0.005, n 0.05: 2.05 ft/s, 0.99 h; in all 1.53 h. TR-55 rounds the 1.486 of
// Manning in feet to 1.49.
TEST_CASE("The segments of the published example take its hours, each and in all", "[drain]") {
  constexpr double ft = 0.3048, inch = 0.0254, hour = 3600;
  const double area = 27, wetted = 28.2, side = 4, root = std::sqrt(1 + side * side);
  const double a = side - 2 * root, depth = (-wetted + std::sqrt(wetted * wetted + 4 * a * area)) / (2 * a);
  const Concentration parts{
      {sheet_segment(100 * ft, 0.01, 0.24, 3.6 * inch), shallow_segment(1400 * ft, 0.01, false),
       channel_segment(7300 * ft, 0.005, {(wetted - 2 * depth * root) * ft, side, depth * ft, 0.05})}};
  CHECK(parts.time_s(Travel::sheet) / hour == Approx(0.30).margin(0.005));
  CHECK(parts.segments[1].speed_m_per_s / ft == Approx(1.6).margin(0.05));
  CHECK(parts.time_s(Travel::shallow) / hour == Approx(0.24).margin(0.005));
  CHECK(parts.segments[2].speed_m_per_s / ft == Approx(2.05).margin(0.01));
  CHECK(parts.time_s(Travel::channel) / hour == Approx(0.99).margin(0.005));
  CHECK(parts.total_s() / hour == Approx(1.53).margin(0.005));
}

TEST_CASE("Segments follow each other down the way, and together fall as it does", "[drain]") {
  const Concentration parts = down_the_middle(plane_with_swale(80.5));
  REQUIRE(parts.segments.size() == 3);
  CHECK(parts.segments.front().begins == SitePoint{30.5, 159.5});
  double fall_m = 0;
  for (std::size_t i = 0; i < parts.segments.size(); ++i) {
    if (i > 0) CHECK(parts.segments[i].begins == parts.segments[i - 1].ends);
    CHECK(distance(parts.segments[i].begins, parts.segments[i].ends) <= parts.segments[i].length_m + 1e-9);
    fall_m += parts.segments[i].slope_ratio * parts.segments[i].length_m;
  }
  CHECK(fall_m == Approx(0.02 * 159 + 0.4).margin(0.05));
}

TEST_CASE("Shallow flow is told anew where the ground turns paved", "[drain]") {
  Site site = plane_with_swale(80.5);
  site.items[0].thing = Cover{{{0, 0}, {60, 0}, {60, 60}, {0, 60}}, "paved", SoilGroup::c};
  const Concentration parts = down_the_middle(site);
  REQUIRE(parts.segments.size() == 3);
  CHECK_FALSE(parts.segments[1].paved);
  CHECK(parts.segments[2].paved);
  CHECK(parts.segments[2].begins.y == Approx(59.5).margin(1));
  // TR-55 appendix F: 20.33 sqrt(s) ft/s paved (from memory)
  CHECK(parts.segments[2].speed_m_per_s == Approx(20.33 * 0.3048 * std::sqrt(0.02)).epsilon(0.001));
}
