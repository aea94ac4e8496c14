#include "geom/drain/openings.hpp"

#include <catch2/catch.hpp>
#include <numbers>

#include "geom/site/field.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double cubic_foot_m3 = foot_m * foot_m * foot_m;

double cfs(double flow_m3_per_s) { return flow_m3_per_s / cubic_foot_m3; }

}  // namespace

TEST_CASE("An orifice rates as the handbook's table does", "[drain]") {
  // HEC-22 4th ed., table 10.6 (read): diameter 0.49 ft, coefficient 0.6; depth over its bottom 0.7 ... 6.6 ft.
  const double area_m2 = std::numbers::pi / 4 * (0.49 * foot_m) * (0.49 * foot_m);
  const std::pair<double, double> table[] = {{0.7, 0.61}, {1.3, 0.93}, {2.0, 1.20}, {2.6, 1.39}, {3.3, 1.59},
                                             {3.9, 1.74}, {4.6, 1.89}, {5.9, 2.16}, {6.6, 2.29}};
  for (const auto& [depth_ft, expected] : table) {
    const double head_m = (depth_ft - 0.49 / 2) * foot_m;
    CHECK(cfs(orifice_m3_per_s(square_orifice_ratio, area_m2, head_m)) == Approx(expected).margin(0.01));
  }
}

TEST_CASE("Three rows of orifices give the handbook's sum", "[drain]") {
  // HEC-22 4th ed., example 10.9 (read): 3, 4 and 3 holes of 1 in under 3.61, 3.94 and 4.26 ft: 0.52 cfs; its parts are
  // rounded to 0.15, 0.21 and 0.16.
  const double hole_m2 = std::numbers::pi / 4 * 0.0254 * 0.0254;
  const double sum = cfs(orifice_m3_per_s(0.6, 3 * hole_m2, 3.61 * foot_m)) +
                     cfs(orifice_m3_per_s(0.6, 4 * hole_m2, 3.94 * foot_m)) +
                     cfs(orifice_m3_per_s(0.6, 3 * hole_m2, 4.26 * foot_m));
  CHECK(sum == Approx(0.52).margin(0.005));
}

TEST_CASE("Water over a rim of 44 ft runs as over a sharp weir", "[drain]") {
  // The weir form of HEC-22 (read) computed apart: 0.05, 0.10 and 0.25 ft over 44 ft give 1.461, 4.131 and 16.33 cfs.
  CHECK(cfs(weir_m3_per_s(sharp_weir_ratio, 44 * foot_m, 0.05 * foot_m)) == Approx(1.461).epsilon(0.005));
  CHECK(cfs(weir_m3_per_s(sharp_weir_ratio, 44 * foot_m, 0.10 * foot_m)) == Approx(4.131).epsilon(0.005));
  CHECK(cfs(weir_m3_per_s(sharp_weir_ratio, 44 * foot_m, 0.25 * foot_m)) == Approx(16.33).epsilon(0.005));
  CHECK(weir_m3_per_s(sharp_weir_ratio, 44 * foot_m, -0.1) == 0);
}

TEST_CASE("A grate takes as a weir while shallow and as an orifice while deep", "[drain]") {
  // HEC-22 4th ed., equations 7.14 and 7.15 (read), computed apart for 2 x 2 ft, half open: 0.75, 2.97, 7.60, 10.75 cfs.
  const Grate grate{2 * foot_m, 2 * foot_m, 0.5};
  CHECK(cfs(grate_m3_per_s(grate, 0.10 * foot_m)) == Approx(0.75).epsilon(0.01));
  CHECK(cfs(grate_m3_per_s(grate, 0.25 * foot_m)) == Approx(2.97).epsilon(0.01));
  CHECK(cfs(grate_m3_per_s(grate, 0.50 * foot_m)) == Approx(7.60).epsilon(0.01));
  CHECK(cfs(grate_m3_per_s(grate, 1.00 * foot_m)) == Approx(10.75).epsilon(0.01));
  const Grate clogged{2 * foot_m, 2 * foot_m, 0.5, 0.5};
  CHECK(grate_m3_per_s(clogged, 0.3) == Approx(grate_m3_per_s(grate, 0.3) / 2));
}

TEST_CASE("A weir drowned to the level of its near side carries nothing", "[drain]") {
  CHECK(drowned_weir_ratio(0.2, -0.1) == 1);
  CHECK(drowned_weir_ratio(0.2, 0.2) == 0);
  CHECK(drowned_weir_ratio(0.2, 0.1) < 1);
  CHECK(drowned_weir_ratio(0.2, 0.1) > drowned_weir_ratio(0.2, 0.15));
}
