// What local inertia leaves out, measured: dam breaks without friction, closed forms as in Delestre and others 2013
// (SWASHES, sections 4.1.1 and 4.1.2; from memory, recomputed).
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <functional>

#include "geom/drain/storm/surface_flow.hpp"
#include "tests/geom/drain/storm/finite_volume.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;
using namespace yardwright::drain::storm;

namespace {

constexpr double g = 9.81, length_m = 80, dam_m = 40, after_s = 5, lake_m = 1;

/// Between the lake and its front: depth in the fan of the wave that runs back into the lake.
double fan_depth_m(double x_m) {
  const double c = std::sqrt(g * lake_m), along = (x_m - dam_m) / after_s;
  if (along <= -c) return lake_m;
  return along < 2 * c ? std::pow(c - along / 2, 2) * 4 / (9 * g) : 0;
}

/// Ritter's, onto a dry bed.
double ritter_depth_m(double x_m) { return fan_depth_m(x_m); }

/// Stoker's, into water 0.1 m deep: depth, speed and bore of the middle state, with the residuals of the jump below.
constexpr double below_m = 0.1, middle_m = 0.396175, middle_m_per_s = 2.321355, bore_m_per_s = 3.105134;

double stoker_depth_m(double x_m) {
  const double along = (x_m - dam_m) / after_s;
  if (along > bore_m_per_s) return below_m;
  return along > middle_m_per_s - std::sqrt(g * middle_m) ? middle_m : fan_depth_m(x_m);
}

using DepthAt = std::function<double(double)>;

std::vector<double> start_m(int cells, double below) {
  std::vector<double> depth_m(static_cast<std::size_t>(cells), below);
  std::fill_n(depth_m.begin(), cells / 2, lake_m);
  return depth_m;
}

std::vector<double> by_oracle(int cells, double below) {
  FiniteVolume line{std::vector<double>(static_cast<std::size_t>(cells), 0.0), start_m(cells, below), length_m / cells};
  const double before_m2 = line.stored_m2();
  line.run_until(after_s);
  REQUIRE(line.stored_m2() == Approx(before_m2).epsilon(1e-12));
  return line.depth_m();
}

std::vector<double> by_surface_flow(int cells, double below) {
  SurfaceFlowOptions closed;
  closed.open_edge = false;
  SurfaceFlow flow{ground_of(cells, 1, length_m / cells, [](SitePoint) { return 0.0; }),
                   std::vector<float>(static_cast<std::size_t>(cells), 0.0F), closed};
  const auto start = start_m(cells, below);
  for (int cell = 0; cell < cells; ++cell) flow.add(cell, start[static_cast<std::size_t>(cell)]);
  for (double now_s = 0; now_s < after_s;) {
    const double step_s = flow.stable_step_s(after_s - now_s);
    flow.step(step_s);
    now_s += step_s;
  }
  const auto depths = flow.depths_m();
  return {depths.begin(), depths.end()};
}

/// Mean error of depth along the line.
double error_m(const std::vector<double>& depth_m, const DepthAt& exact_m) {
  double sum = 0;
  for (std::size_t i = 0; i < depth_m.size(); ++i) {
    const double x_m = (static_cast<double>(i) + 0.5) * length_m / static_cast<double>(depth_m.size());
    sum += std::abs(depth_m[i] - exact_m(x_m));
  }
  return sum / static_cast<double>(depth_m.size());
}

struct Errors {
  std::array<double, 3> oracle_m, inertia_m;  ///< at 0.5, 0.25 and 0.125 m
  double order() const { return std::log2(oracle_m[0] / oracle_m[2]) / 2; }
};

Errors errors_of(const char* name, double below, const DepthAt& exact_m) {
  Errors errors{};
  constexpr std::array counts{160, 320, 640};
  for (std::size_t i = 0; i < counts.size(); ++i) {
    errors.oracle_m[i] = error_m(by_oracle(counts[i], below), exact_m);
    errors.inertia_m[i] = error_m(by_surface_flow(counts[i], below), exact_m);
  }
  std::printf("%s, mean error of depth in mm at 0.5, 0.25, 0.125 m: full equations %.2f %.2f %.2f (order %.2f), ", name,
              1e3 * errors.oracle_m[0], 1e3 * errors.oracle_m[1], 1e3 * errors.oracle_m[2], errors.order());
  std::printf("local inertia %.1f %.1f %.1f\n", 1e3 * errors.inertia_m[0], 1e3 * errors.inertia_m[1],
              1e3 * errors.inertia_m[2]);
  return errors;
}

}  // namespace

TEST_CASE("Stoker's middle state satisfies the jump at its bore", "[storm]") {
  const double kept = middle_m * (bore_m_per_s - middle_m_per_s) - below_m * bore_m_per_s;
  const double pushed =
      middle_m * middle_m_per_s * (middle_m_per_s - bore_m_per_s) + g / 2 * (middle_m * middle_m - below_m * below_m);
  CHECK(std::abs(kept) < 1e-5);
  CHECK(std::abs(pushed) < 1e-5);
  CHECK(middle_m_per_s == Approx(2 * (std::sqrt(g * lake_m) - std::sqrt(g * middle_m))).epsilon(1e-5));
  CHECK(ritter_depth_m(dam_m) == Approx(4.0 / 9).epsilon(1e-9));  // W59
}

TEST_CASE("A lake at rest over a bed with dry tops stays at rest in the full equations too", "[storm]") {
  std::vector<double> bed_m, depth_m;
  for (int i = 0; i < 60; ++i) {
    bed_m.push_back(std::sin(i / 5.0));
    depth_m.push_back(std::max(0.0, 0.5 - bed_m.back()));
  }
  FiniteVolume lake{bed_m, depth_m, 1};
  lake.run_until(100);
  for (std::size_t i = 0; i < depth_m.size(); ++i) CHECK(std::abs(lake.flow_m2_per_s()[i]) < 1e-12);
}

TEST_CASE("Onto a dry bed the full equations find Ritter's wave, and local inertia misses it by no more than it says",
          "[storm]") {
  const Errors errors = errors_of("dam break onto a dry bed", 0, ritter_depth_m);
  CHECK(errors.order() > 0.5);
  for (const double error : errors.inertia_m) CHECK(error < 0.085);
  CHECK(errors.inertia_m[2] > 10 * errors.oracle_m[2]);
}

TEST_CASE(
    "Into shallow water the full equations find Stoker's bore, and local inertia misses it by no more than it says",
    "[storm]") {
  const Errors errors = errors_of("dam break into shallow water", below_m, stoker_depth_m);
  CHECK(errors.order() > 0.5);
  for (const double error : errors.inertia_m) CHECK(error < 0.075);
  CHECK(errors.inertia_m[2] > 10 * errors.oracle_m[2]);
}
