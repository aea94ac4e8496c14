#include "geom/drain/uplift.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/site/field.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double pound_n = 4.4482216153;

/// 12 x 14 ft outside, its base 10 ft down, walls of 10 in, a floor of 12 in.
PitShell boot_pit() {
  const double wall_m = 10 * 0.0254;
  return {12 * foot_m - 2 * wall_m, 14 * foot_m - 2 * wall_m, 10 * foot_m, wall_m, 1 * foot_m};
}

Uplift with_water_at(const PitShell& pit, double depth_ft) {
  SoilAndWater ground;
  ground.water_depth_m = depth_ft * foot_m;
  return uplift_of(pit, ground);
}

}  // namespace

TEST_CASE("An empty pit weighs and floats as computed by hand", "[drain]") {
  // By hand with 150 and 62.4 lb/ft3: walls 365.0 ft3 and floor 168 ft3, 79,950 lb; water 0, 2, 4, 6 ft down lifts
  // 104,832, 83,866, 62,899 and 41,933 lb.
  const std::pair<double, double> uplifts[] = {{0, 104832}, {2, 83866}, {4, 62899}, {6, 41933}};
  for (const auto& [depth_ft, pounds] : uplifts) {
    const Uplift uplift = with_water_at(boot_pit(), depth_ft);
    CHECK(uplift.weight_n / pound_n == Approx(79950).epsilon(0.001));
    CHECK(uplift.uplift_n / pound_n == Approx(pounds).epsilon(0.001));
  }
  CHECK(with_water_at(boot_pit(), 2).safety_ratio() == Approx(0.953).epsilon(0.002));
}

TEST_CASE("A pit floats above one level of the groundwater", "[drain]") {
  // The same by hand: it floats where the water is higher than 2.37 ft down; a safety of 1.1 at 3.07 ft.
  CHECK(highest_water_depth_m(boot_pit(), {}, 1.0) / foot_m == Approx(2.37).margin(0.01));
  CHECK(highest_water_depth_m(boot_pit(), {}, 1.1) / foot_m == Approx(3.07).margin(0.01));
  PitShell heavy = boot_pit();
  heavy.floor_m = 8 * foot_m;
  CHECK(highest_water_depth_m(heavy, {}, 1.1) == 0);
}

TEST_CASE("A tank of a forum's example displaces and floats as printed", "[drain]") {
  // An engineering forum (read): 68 x 126 x 64 in, 317 ft3, buoyancy 19,802 lb. A shell of no thickness.
  const PitShell tank{68 * 0.0254, 126 * 0.0254, 64 * 0.0254, 0, 0};
  CHECK(with_water_at(tank, 0).uplift_n / pound_n == Approx(19802).epsilon(0.005));
  CHECK(with_water_at(tank, 0).weight_n == 0);
}

TEST_CASE("A toe holds a pit down by the soil on it", "[drain]") {
  PitShell toed = boot_pit();
  toed.toe_m = 1 * foot_m;
  const Uplift with = with_water_at(toed, 2), without = with_water_at(boot_pit(), 2);
  // By hand: toe area 14 x 16 - 12 x 14 = 56 ft2; soil over it 2 ft at 120 and 7 ft at 57.6 lb/ft3: 36,019 lb. The
  // concrete gains 56 ft3: 88,350 lb.
  CHECK(with.toe_n / pound_n == Approx(36019).epsilon(0.002));
  CHECK(with.weight_n / pound_n == Approx(88350).epsilon(0.001));
  CHECK(with.uplift_n / pound_n == Approx(83866 + 56 * 62.4).epsilon(0.001));
  CHECK(with.safety_ratio() == Approx(1.424).margin(0.005));
  CHECK(with.safety_ratio() > without.safety_ratio());
}

TEST_CASE("Water under the base lifts nothing", "[drain]") {
  CHECK(std::isinf(with_water_at(boot_pit(), 10).safety_ratio()));
  CHECK(highest_water_depth_m(boot_pit(), {}, 1.0) < boot_pit().base_depth_m);
}
