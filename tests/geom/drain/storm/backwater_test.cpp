// Steady flow whose depth is chosen and whose bed follows from the whole equation of gradually varied flow, momentum's
// advection and all: MacDonald, Baines, Nichols, Samuels 1997 (the method from memory).
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>

#include "geom/drain/storm/surface_flow.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;
using namespace yardwright::drain::storm;

namespace {

constexpr double g = 9.81;

/// Deeper in its middle by a quarter than at its ends.
struct Channel {
  double length_m, flow_m2_per_s, end_depth_m, roughness_n;

  double depth_m(double x_m) const { return end_depth_m * (1 + bulge(x_m) / 4); }
  double froude(double x_m) const { return flow_m2_per_s / (depth_m(x_m) * std::sqrt(g * depth_m(x_m))); }

  double bed_fall(double x_m) const {
    const double h = depth_m(x_m), rise = end_depth_m / 4 * bulge(x_m) * -32 * (x_m / length_m - 0.5) / length_m;
    const double friction = std::pow(roughness_n * flow_m2_per_s, 2) / std::pow(h, 10.0 / 3);
    return (1 - std::pow(froude(x_m), 2)) * rise + friction;
  }

  /// Below the bed at its upper end, by the midpoint rule: 0.1 mm of a hundred metres would show as a change of its order.
  double drop_m(double x_m) const {
    constexpr int parts = 2000;
    double sum = 0;
    for (int i = 0; i < parts; ++i) sum += bed_fall(x_m * (i + 0.5) / parts);
    return sum * x_m / parts;
  }

 private:
  double bulge(double x_m) const { return std::exp(-16 * std::pow(x_m / length_m - 0.5, 2)); }
};

/// Cells beyond each end, where the walls of the grid are felt.
constexpr int beyond = 30;

/// Fed at its upper end, held at its depths beyond the lower one, until it is steady.
SurfaceFlow steady_flow(const Channel& channel, int cells, double until_s) {
  SurfaceFlowOptions closed;
  closed.open_edge = false;
  const double cell_m = channel.length_m / cells;
  const int all = cells + 2 * beyond;
  const auto x_m = [&](int cell) { return (cell - beyond + 0.5) * cell_m; };
  const auto bed_m = [&](SitePoint at) { return 10 - channel.drop_m(at.x - beyond * cell_m); };
  SurfaceFlow flow{ground_of(all, 1, cell_m, bed_m),
                   std::vector<float>(static_cast<std::size_t>(all), static_cast<float>(channel.roughness_n)), closed};
  for (int cell = 0; cell < all; ++cell) flow.add(cell, channel.end_depth_m);
  for (double now_s = 0; now_s < until_s;) {
    const double step_s = flow.stable_step_s(1);
    flow.add(0, channel.flow_m2_per_s * step_s / cell_m);
    flow.step(step_s);
    for (int cell = cells + beyond; cell < all; ++cell) flow.add(cell, channel.depth_m(x_m(cell)) - flow.depth_m(cell));
    now_s += step_s;
  }
  return flow;
}

struct DepthError {
  double mean, greatest;  ///< shares of the depth
};

DepthError error_of(const Channel& channel, int cells, double until_s) {
  const SurfaceFlow flow = steady_flow(channel, cells, until_s);
  DepthError error{0, 0};
  for (int cell = 0; cell < cells; ++cell) {
    const int on_grid = cell + beyond;
    REQUIRE(flow.flow_east_m2_per_s(on_grid) == Approx(channel.flow_m2_per_s).epsilon(1e-3));
    const double exact_m = channel.depth_m((cell + 0.5) * channel.length_m / cells);
    const double share = std::abs(flow.depth_m(on_grid) / exact_m - 1);
    error.mean += share / cells;
    error.greatest = std::max(error.greatest, share);
  }
  return error;
}

std::array<DepthError, 3> errors_of(const char* name, const Channel& channel, int cells, double until_s) {
  std::array<DepthError, 3> errors{};
  std::printf("%s, Froude %.2f to %.2f, error of depth, mean (greatest):", name, channel.froude(channel.length_m / 2),
              channel.froude(0));
  for (DepthError& error : errors) {
    error = error_of(channel, cells, until_s);
    std::printf(" %.3f %% (%.3f %%) at %g m;", 100 * error.mean, 100 * error.greatest, channel.length_m / cells);
    cells *= 2;
  }
  std::printf(" order %.2f (%.2f)\n", std::log2(errors[0].mean / errors[2].mean) / 2,
              std::log2(errors[0].greatest / errors[2].greatest) / 2);
  return errors;
}

}  // namespace

TEST_CASE("A sheet of water over grass comes to the depths of the whole equation, closer with finer cells", "[storm]") {
  const Channel grass{100, 0.02, 0.1, 0.15};
  REQUIRE(grass.froude(0) < 0.3);
  const auto errors = errors_of("sheet over grass", grass, 25, 2400);
  CHECK(std::log2(errors[0].mean / errors[2].mean) / 2 > 0.8);
  CHECK(errors[1].mean < errors[0].mean);
  CHECK(errors[2].mean < errors[1].mean);
  CHECK(errors[2].mean < 0.01);
}

TEST_CASE("In a deep slow channel what is left of the error is the advection left out", "[storm]") {
  // Without that term levels miss the change of q^2 / (2 g h^2) between the ends and the middle: 18 mm of 2.5 m, a little
  // of which friction takes back.
  const Channel channel{1000, 2, 2, 0.033};
  REQUIRE(channel.froude(0) < 0.3);
  const auto errors = errors_of("deep slow channel", channel, 50, 7200);
  for (const DepthError& error : errors) CHECK(error.greatest == Approx(0.0073).epsilon(0.2));
}
