#include "geom/drain/storm/surface_flow.hpp"
#include "tests/geom/drain/terrain.hpp"

#include <tbb/global_control.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <random>

using namespace yardwright;
using namespace yardwright::drain;
using namespace yardwright::drain::storm;

namespace {

constexpr double rain_50_mm_per_h = 0.05 / 3600;

SurfaceFlow water_on(const LevelGrid& bed, double roughness_n, SurfaceFlowOptions options = {}) {
  return SurfaceFlow{bed, std::vector<float>(bed.frame().cells(), static_cast<float>(roughness_n)), options};
}

/// Even rain until a time, in stable steps no longer than `longest_s`; on walls (`bed_m` from 90 m up) none falls.
void rain_until(SurfaceFlow& flow, double& now_s, double until_s, double rain_m_per_s, double longest_s = 1) {
  std::vector<std::uint8_t> wall(flow.frame().cells());
  for (std::size_t i = 0; i < wall.size(); ++i) wall[i] = flow.bed_m(static_cast<Cell>(i)) > 90;
  while (now_s < until_s) {
    const double step_s = std::min(flow.stable_step_s(longest_s), until_s - now_s);
    const double depth_m[] = {rain_m_per_s * step_s, 0};
    flow.rain(wall, depth_m);
    flow.step(step_s);
    now_s += step_s;
  }
}

/// The kinematic plane of 100 m, falling to the east at 1 %, n 0.015, under 50 mm/h: analytic, with its times and flows
/// as shares of the equilibrium time and flow.
struct KinematicPlane {
  static constexpr double length_m = 100, slope = 0.01, roughness_n = 0.015;
  static double equilibrium_s() {
    return std::pow(roughness_n * length_m / (std::sqrt(slope) * std::pow(rain_50_mm_per_h, 2.0 / 3.0)), 0.6);
  }
  static double rising_share(double time_share) { return std::pow(time_share, 5.0 / 3.0); }
};

/// Three rows between walls, with a wall at the upper end.
SurfaceFlow plane_of(double cell_m) {
  SurfaceFlowOptions options;
  options.least_edge_fall = 1e-6;
  const int columns = static_cast<int>(KinematicPlane::length_m / cell_m) + 1;
  const auto bed = ground_of(columns, 5, cell_m, [&](SitePoint at) {
    const bool wall = at.x < cell_m || at.y < cell_m || at.y > 4 * cell_m;
    return wall ? 120 : 10 - KinematicPlane::slope * at.x;
  });
  return water_on(bed, KinematicPlane::roughness_n, options);
}

/// Of the middle row.
double outflow_share(const SurfaceFlow& flow) {
  const int columns = flow.frame().columns;
  return flow.flow_east_m2_per_s(3 * columns - 1) / (rain_50_mm_per_h * KinematicPlane::length_m);
}

}  // namespace

TEST_CASE("A lake among dry islands stays at rest", "[storm]") {
  // Level water over any bed has no flow (W54): 1e-12 m2/s and 1e-12 m after 100 s.
  const auto bed = ground_of(40, 30, 1, [](SitePoint at) { return std::sin(at.x / 3) + std::cos(at.y / 4); });
  SurfaceFlowOptions closed;
  closed.open_edge = false;
  SurfaceFlow lake = water_on(bed, 0.03, closed);
  std::vector<double> before_m;
  for (Cell cell = 0; cell < 1200; ++cell) {
    lake.add(cell, std::max(0.0, 0.5 - lake.bed_m(cell)));
    before_m.push_back(lake.depth_m(cell));
  }
  for (double now_s = 0; now_s < 100;) {
    const double step_s = lake.stable_step_s(1);
    lake.step(step_s);
    now_s += step_s;
  }
  for (Cell cell = 0; cell < 1200; ++cell) {
    CHECK(std::abs(lake.flow_east_m2_per_s(cell)) < 1e-12);
    CHECK(std::abs(lake.flow_north_m2_per_s(cell)) < 1e-12);
    CHECK(std::abs(lake.depth_m(cell) - before_m[static_cast<std::size_t>(cell)]) < 1e-12);
  }
}

TEST_CASE("A closed box keeps all the rain", "[storm]") {
  // An identity (W55): 50 mm/h for an hour stand 50 mm deep.
  SurfaceFlowOptions closed;
  closed.open_edge = false;
  const auto bed = ground_of(25, 17, 2, [](SitePoint at) { return 0.3 * std::sin(at.x) * std::cos(2 * at.y); });
  SurfaceFlow box = water_on(bed, 0.03, closed);
  double now_s = 0;
  rain_until(box, now_s, 3600, rain_50_mm_per_h);
  CHECK(box.stored_m3() / (25 * 17 * 4) == Approx(0.05).epsilon(1e-9));
  CHECK(box.left_m3() == 0);
}

TEST_CASE("Rain on a plane runs off as the kinematic wave does", "[storm]") {
  // Closed form of the kinematic plane (W56): equilibrium after 445.23 s, 0.0992, 0.3150 and 0.6191 of it at quarters.
  CHECK(KinematicPlane::equilibrium_s() == Approx(445.23).epsilon(1e-4));
  SurfaceFlow plane = plane_of(1);
  double now_s = 0;
  for (const double share : {0.25, 0.5, 0.75}) {
    rain_until(plane, now_s, share * KinematicPlane::equilibrium_s(), rain_50_mm_per_h);
    CHECK(outflow_share(plane) == Approx(KinematicPlane::rising_share(share)).epsilon(0.03));
  }
  rain_until(plane, now_s, KinematicPlane::equilibrium_s(), rain_50_mm_per_h);
  CHECK(outflow_share(plane) == Approx(1).epsilon(0.05));  // the knee, where any scheme rounds most
  rain_until(plane, now_s, 600, rain_50_mm_per_h);
  CHECK(outflow_share(plane) == Approx(1).epsilon(0.001));
}

TEST_CASE("A plane drains after the rain as the kinematic wave does", "[storm]") {
  // Closed form (W57): 60, 120 and 300 s after a storm of 600 s the flow is 0.7951, 0.6273 and 0.3032 of equilibrium.
  SurfaceFlow plane = plane_of(1);
  double now_s = 0;
  rain_until(plane, now_s, 600, rain_50_mm_per_h);
  const std::pair<double, double> recession[] = {{60, 0.7951}, {120, 0.6273}, {300, 0.3032}};
  for (const auto& [after_s, share] : recession) {
    rain_until(plane, now_s, 600 + after_s, 0);
    CHECK(outflow_share(plane) == Approx(share).epsilon(0.02));
  }
}

TEST_CASE("Finer cells come closer to the kinematic wave", "[storm]") {
  // Mean error of the rising flow at 1/8 ... 7/8 of the equilibrium time; first order in the cell is expected of a scheme
  // that takes depths upstream.
  const auto error = [](double cell_m) {
    SurfaceFlow plane = plane_of(cell_m);
    double now_s = 0, sum = 0;
    for (int i = 1; i < 8; ++i) {
      rain_until(plane, now_s, i / 8.0 * KinematicPlane::equilibrium_s(), rain_50_mm_per_h, 0.1);
      sum += std::abs(outflow_share(plane) - KinematicPlane::rising_share(i / 8.0)) / 7;
    }
    return sum;
  };
  const double at_4_m = error(4), at_2_m = error(2), at_1_m = error(1);
  const double order = std::log2(at_4_m / at_1_m) / 2;
  std::printf("kinematic plane, mean error: %.5f at 4 m, %.5f at 2 m, %.5f at 1 m; order %.2f\n", at_4_m, at_2_m,
              at_1_m, order);
  CHECK(order > 0.7);
  CHECK(at_2_m < at_4_m);
  CHECK(at_1_m < at_2_m);
}

TEST_CASE("A tilted V of two planes and a channel reaches its equilibrium", "[storm]") {
  // Di Giammarco 1996, geometry as in a federal groundwater code's test (read): planes 800 x 1000 m each side at 5 %, n
  // 0.015; channel 20 m wide at 2 %, n 0.15; 3e-6 m/s for 90 min. All that falls, 4.86 m3/s, then leaves; 26,244 m3 fell.
  const double cell_m = 20;
  const auto bed = ground_of(81, 50, cell_m, [](SitePoint at) {
    const double beside_m = std::max(0.0, std::abs(at.x - 810) - 10);
    return 0.05 * beside_m + 0.02 * at.y;
  });
  std::vector<float> roughness(bed.frame().cells(), 0.015F);
  for (int row = 0; row < 50; ++row) roughness[bed.frame().offset({40, row})] = 0.15F;
  SurfaceFlow valley{bed, roughness};
  double now_s = 0, left_m3 = 0;
  rain_until(valley, now_s, 85 * 60, 3e-6);
  left_m3 = valley.left_m3();
  rain_until(valley, now_s, 90 * 60, 3e-6);
  CHECK((valley.left_m3() - left_m3) / 300 == Approx(4.86).epsilon(0.005));
  CHECK(valley.stored_m3() + valley.left_m3() == Approx(26244).epsilon(1e-6));
  rain_until(valley, now_s, 180 * 60, 0);
  CHECK(valley.stored_m3() + valley.left_m3() == Approx(26244).epsilon(1e-6));
}

TEST_CASE("No water is made or lost on rough ground with walls", "[storm]") {
  const unsigned seed = 20261;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> rough(-0.2, 0.2);
  const auto bed = ground_of(60, 45, 1, [&](SitePoint at) {
    const bool wall = std::hypot(at.x - 20, at.y - 20) < 6 || std::hypot(at.x - 40, at.y - 25) < 5;
    return 5 - 0.03 * at.x + rough(random) + (wall ? 100 : 0);
  });
  SurfaceFlow flow = water_on(bed, 0.02);
  const auto walls =
      static_cast<double>(std::ranges::count_if(bed.values(), [](float level_m) { return level_m > 90; }));
  double now_s = 0;
  rain_until(flow, now_s, 1800, 4 * rain_50_mm_per_h);
  CHECK(flow.stored_m3() + flow.left_m3() == Approx((60 * 45 - walls) * 0.1).epsilon(1e-9));
  CHECK(flow.left_m3() > 0);
  for (Cell cell = 0; cell < 60 * 45; ++cell) REQUIRE(flow.depth_m(cell) >= 0);
}

TEST_CASE("A storm has the same bits at any number of threads", "[storm]") {
  const auto run = [](std::size_t threads) {
    const tbb::global_control limit{tbb::global_control::max_allowed_parallelism, threads};
    const auto bed = ground_of(70, 90, 1, [](SitePoint at) { return std::sin(at.x / 7) * std::cos(at.y / 5); });
    SurfaceFlow flow = water_on(bed, 0.03);
    double now_s = 0;
    rain_until(flow, now_s, 600, 2 * rain_50_mm_per_h);
    return std::pair{flow.depths_m(), flow.left_m3()};
  };
  CHECK(run(1) == run(4));
}

TEST_CASE("Water taken from a cell is never more than it holds", "[storm]") {
  SurfaceFlow flow = water_on(ground_of(3, 3, 1, [](SitePoint) { return 0.0; }), 0.03);
  CHECK(flow.add(4, 0.2) == 0.2);
  CHECK(flow.add(4, -0.5) == -0.2);
  CHECK(flow.depth_m(4) == 0);
}

TEST_CASE("A single dry cell is a grid on which nothing moves", "[storm]") {
  SurfaceFlow flow = water_on(ground_of(1, 1, 1, [](SitePoint) { return 3.0; }), 0.03);
  flow.step(flow.stable_step_s(1));
  CHECK(flow.depth_m(0) == 0);
  CHECK(flow.left_m3() == 0);
}
