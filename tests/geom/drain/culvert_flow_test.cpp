#include "geom/drain/culvert_flow.hpp"

#include <catch2/catch.hpp>

#include "geom/site/field.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double cubic_foot_m3 = foot_m * foot_m * foot_m;

/// In feet and inches, as the handbook's cases are; falling to level 0 at its end.
CulvertBarrel barrel(CulvertInlet inlet, double diameter_in, double length_ft, double slope_ratio, double n) {
  const double length_m = length_ft * foot_m;
  return {inlet, diameter_in * 0.0254, length_m, slope_ratio * length_m, 0, n};
}

}  // namespace

TEST_CASE("An inlet asks for the headwater of HDS-5's forms", "[drain]") {
  // HDS-5's inlet control, computed apart: 24 in concrete, square edge, slope 0.01: 1.683, 2.247, 2.943, 3.850 ft.
  const CulvertBarrel concrete = barrel(CulvertInlet::concrete_square, 24, 60, 0.01, 0.012);
  const std::pair<double, double> cases[] = {{10, 1.683}, {15, 2.247}, {20, 2.943}, {25, 3.850}};
  for (const auto& [cfs, headwater_ft] : cases)
    CHECK(inlet_headwater_m(concrete, cfs * cubic_foot_m3) / foot_m == Approx(headwater_ft).epsilon(0.01));
}

TEST_CASE("A full barrel loses what HDS-5 says", "[drain]") {
  // 24 in, n 0.012, 60 ft, ke 0.5, 20 cfs, computed apart: 1.341 ft.
  const CulvertBarrel concrete = barrel(CulvertInlet::concrete_square, 24, 60, 0.01, 0.012);
  CHECK(full_barrel_loss_m(concrete, 20 * cubic_foot_m3) / foot_m == Approx(1.341).epsilon(0.01));
}

TEST_CASE("The smallest metal pipe for the handbook's pond outlet is 30 in", "[drain]") {
  // HEC-22 4th ed., example 10.8 (read): 19.4 cfs with 2.3 ft of head at a slope of 0.04 and n 0.024 asks for 30 in.
  const auto headwater_ft = [](double diameter_in) {
    const CulvertBarrel metal = barrel(CulvertInlet::metal_headwall, diameter_in, 164, 0.04, 0.024);
    return inlet_headwater_m(metal, 19.4 * cubic_foot_m3) / foot_m;
  };
  CHECK(headwater_ft(30) <= 2.3);
  CHECK(headwater_ft(30) == Approx(2.19).epsilon(0.01));
  CHECK(headwater_ft(27) > 2.3);
}

TEST_CASE("What a culvert carries asks for the headwater that it has", "[drain]") {
  const CulvertBarrel steep = barrel(CulvertInlet::concrete_square, 24, 60, 0.02, 0.012);
  for (const double headwater_m : {0.3, 0.6, 0.9, 1.4}) {
    const double flow = culvert_m3_per_s(steep, steep.start_invert_m + headwater_m, -1);
    CHECK(inlet_headwater_m(steep, flow) <= headwater_m + 1e-6);
    CHECK(flow > 0);
  }
}

TEST_CASE("Water that stands as high at the end stops a culvert", "[drain]") {
  const CulvertBarrel pipe = barrel(CulvertInlet::metal_projecting, 18, 40, 0.005, 0.024);
  const double start_m = pipe.start_invert_m + 0.8;
  CHECK(culvert_m3_per_s(pipe, start_m, start_m) == 0);
  CHECK(culvert_m3_per_s(pipe, pipe.start_invert_m, -1) == 0);
  CHECK(culvert_m3_per_s(pipe, start_m, start_m - 0.05) < culvert_m3_per_s(pipe, start_m, -1));
}

TEST_CASE("A culvert carries more the higher the water before it stands", "[drain]") {
  const CulvertBarrel pipe = barrel(CulvertInlet::metal_projecting, 18, 40, 0.01, 0.024);
  double before = 0;
  for (double headwater_m = 0.02; headwater_m < 2; headwater_m += 0.02) {
    const double flow = culvert_m3_per_s(pipe, pipe.start_invert_m + headwater_m, -1);
    CHECK(flow >= before * 0.999);
    before = flow;
  }
}

TEST_CASE("A shallow culvert is held back by water standing at its end", "[drain]") {
  const CulvertBarrel flat = barrel(CulvertInlet::metal_projecting, 18, 40, 0, 0.024);
  const double start_m = 0.25;
  CHECK(culvert_m3_per_s(flat, start_m, -1) > 0);
  CHECK(culvert_m3_per_s(flat, start_m, 0.2) < culvert_m3_per_s(flat, start_m, -1));
  CHECK(culvert_m3_per_s(flat, start_m, start_m - 0.0005) < 0.2 * culvert_m3_per_s(flat, start_m, -1));
}

TEST_CASE("A level culvert carries more the higher the water before it stands, shallow or full", "[drain]") {
  const CulvertBarrel flat = barrel(CulvertInlet::concrete_square, 18, 40, 0, 0.012);
  double before = 0;
  for (double headwater_m = 0.02; headwater_m < 1.5; headwater_m += 0.02) {
    const double flow = culvert_m3_per_s(flat, headwater_m, -1);
    CHECK(flow >= before * 0.999);
    before = flow;
  }
}
