#include "geom/ground/design_surface.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame quarter_metre{{0, 0}, 0.25, 400, 400};  // 100 m by 100 m
constexpr GridFrame one_metre{{-50, -50}, 1, 200, 200};
constexpr double float_m = 1e-4;  // what a float keeps of a level of some hundred metres

const SitePath square{{40, 40}, {60, 40}, {60, 60}, {40, 60}};

DesignSurface graded(LevelGrid ground, std::vector<Thing> things) {
  return design_surface(site_with(std::move(ground), std::move(things)));
}

double design_at(const DesignSurface& surface, CellIndex cell) { return surface.design.at(cell); }

}  // namespace

TEST_CASE("A site without ground has level 0 everywhere and says that its ground is not known") {
  const DesignSurface surface = graded({}, {Pad{square, 3.0, 3.0}});
  CHECK_FALSE(surface.known());
  CHECK(surface.level_m({50, 50}) == 0);
}

TEST_CASE("A site that grades nothing shares the existing levels") {
  const DesignSurface surface = graded(rolling_ground(one_metre, 1), {Bin{}, Cover{}});
  CHECK(surface.design.same_data(surface.existing));
}

TEST_CASE("A fill pad has a level top and slopes that fall to the ground at their ratio") {
  const DesignSurface surface = graded(flat_ground(quarter_metre, 100), {Pad{square, 101, 3.0}});
  CHECK(surface.level_m({50, 50}) == Approx(101));
  CHECK(surface.level_m({61.5, 50}) == Approx(100.5).margin(float_m));  // closed form: 1.5 m out at 3:1
  CHECK(surface.level_m({50, 38.5}) == Approx(100.5).margin(float_m));
  CHECK(surface.level_m({63.5, 50}) == Approx(100));                       // the toe is 3 m out
  CHECK(surface.level_m({62, 62}) == Approx(101 - 2 / 3.0).margin(0.05));  // planes meet in a hip at the corner
}

TEST_CASE("A cut pad's slopes rise to the ground at their ratio") {
  const DesignSurface surface = graded(flat_ground(quarter_metre, 100), {Pad{square, 98, 2.0}});
  CHECK(surface.level_m({50, 50}) == Approx(98));
  CHECK(surface.level_m({62, 50}) == Approx(99).margin(float_m));
  CHECK(surface.level_m({64.5, 50}) == Approx(100));
}

TEST_CASE("A pad on a hillside is cut above and filled below") {
  const auto hillside = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.05 * (at.x - 50); });
  const DesignSurface surface = graded(hillside, {Pad{square, 100, 3.0}});
  CHECK(surface.level_m({41, 50}) == Approx(100));
  CHECK(surface.level_m({59, 50}) == Approx(100));
  // Closed form of the toe: z = 100 - d/3 meets 100 - 0.05 (10 + d) at d = 0.5 / (1/3 - 0.05) = 1.765 m.
  CHECK(surface.level_m({39, 50}) == Approx(100 - 1 / 3.0).margin(float_m));
  CHECK(surface.level_m({38, 50}) == Approx(surface.existing_level_m({38, 50})));
  CHECK(surface.level_m({61, 50}) == Approx(100 + 1 / 3.0).margin(float_m));
  CHECK(surface.level_m({62, 50}) == Approx(surface.existing_level_m({62, 50})));
}

TEST_CASE("A slope ends where it first meets the ground and fills no ravine beyond") {
  const auto ravine = ground_of(one_metre, [](SitePoint at) { return at.x > 70 && at.x < 80 ? 90.0 : 100.0; });
  const DesignSurface surface = graded(ravine, {Pad{square, 101, 3.0}});
  CHECK(surface.level_m({75, 50}) == Approx(90));
}

TEST_CASE("A berm stands its height above the ground along its path, sloping down on both sides") {
  const auto hillside = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.02 * at.y; });
  const DesignSurface surface = graded(hillside, {Berm{{{50, 20}, {50, 80}}, 0.6, 1.0, 4.0}});
  CHECK(surface.level_m({50, 30}) == Approx(100.6 + 0.6).margin(1e-3));
  CHECK(surface.level_m({50, 70}) == Approx(100.6 + 1.4).margin(1e-3));
  CHECK(surface.level_m({51.5, 50}) == Approx(101.6 - 1.0 / 4).margin(1e-3));
  CHECK(surface.level_m({53.2, 50}) == Approx(101));
}

TEST_CASE("A swale's bottom falls evenly between the depths at its ends, even under a rise") {
  const auto mound =
      ground_of(quarter_metre, [](SitePoint at) { return 100 + (std::abs(at.x - 50) < 10 ? 0.5 : 0.0); });
  const DesignSurface surface = graded(mound, {Swale{{{20, 50}, {80, 50}}, 0.3, 0.5, 1.0, 4.0}});
  for (const double x : {20.0, 35.0, 50.0, 65.0, 80.0}) {
    INFO(x);
    CHECK(surface.level_m({x, 50}) == Approx(99.7 - 0.2 * (x - 20) / 60).margin(2e-3));
  }
  CHECK(surface.level_m({35, 51.5}) == Approx(99.65 + 1.0 / 4).margin(2e-3));
  CHECK(surface.level_m({35, 53}) == Approx(100));
}

TEST_CASE("A berm is built after the swale that crosses it, whatever their order in the site") {
  const Berm berm{{{50, 20}, {50, 80}}, 0.6, 1.0, 4.0};
  const Swale swale{{{20, 50}, {80, 50}}, 0.3, 0.3, 1.0, 4.0};
  const LevelGrid ground = flat_ground(quarter_metre, 100);
  const DesignSurface one = graded(ground, {berm, swale}), other = graded(ground, {swale, berm});
  CHECK(one.design == other.design);
  CHECK(one.level_m({50, 50}) == Approx(100.6));
}

TEST_CASE("No slope of a pad is steeper than its ratio and nothing moves outside its affected area, on random ground") {
  for (const unsigned seed : {11u, 12u, 13u, 14u}) {
    INFO("seed " << seed);
    const LevelGrid ground = rolling_ground(one_metre, seed);
    const Item item{{1}, "", 0, {}, Pad{{{20, 20}, {70, 25}, {60, 80}, {15, 60}}, 100.5, 3.0}};
    Site site;
    site.ground.levels = ground;
    site.items = {item};
    const DesignSurface surface = design_surface(site);
    const auto area = affected_area(item, ground);
    REQUIRE(area.has_value());
    CHECK(area == changed_area(surface.existing, surface.design));
    for (int row = 0; row < one_metre.rows; ++row) {
      for (int column = 1; column < one_metre.columns; ++column) {
        const CellIndex here{column, row}, west{column - 1, row};
        const bool moved = design_at(surface, here) != ground.at(here);
        if (moved) REQUIRE(std::abs(design_at(surface, here) - design_at(surface, west)) < 1 / 3.0 + float_m);
      }
    }
  }
}

TEST_CASE("Grading twice what is already graded moves nothing") {
  for (const unsigned seed : {21u, 22u, 23u}) {
    INFO("seed " << seed);
    const Pad pad{{{20, 20}, {70, 25}, {60, 80}, {15, 60}}, 100.2, 3.0};
    const DesignSurface once = graded(rough_ground(one_metre, seed, 3), {pad});
    const DesignSurface twice = graded(once.design, {pad});
    CHECK(twice.design == once.design);
  }
}

TEST_CASE("A pad that holds the whole grid levels all of it, and one far away nothing") {
  const LevelGrid ground = rolling_ground(one_metre, 3);
  const Pad wide{{{-1e4, -1e4}, {1e4, -1e4}, {1e4, 1e4}, {-1e4, 1e4}}, 99, 3.0};
  CHECK(graded(ground, {wide}).design == flat_ground(one_metre, 99));
  const Pad far_away{{{1e12, 0}, {1e12 + 10, 0}, {1e12, 10}}, 99, 3.0};
  CHECK(graded(ground, {far_away}).design == ground);
}

TEST_CASE("Lines and outlines that are not yet drawn grade nothing") {
  const LevelGrid ground = rolling_ground(one_metre, 4);
  const std::vector<Thing> begun{Pad{{}, 99, 3}, Pad{{{1, 1}, {2, 2}}, 99, 3}, Berm{}, Berm{{{5, 5}}},
                                 Swale{{{5, 5}, {5, 5}}}};
  CHECK(graded(ground, begun).design == ground);
}

TEST_CASE("A drive that is not graded leaves the ground as it lies") {
  const LevelGrid ground = rolling_ground(one_metre, 5);
  CHECK(graded(ground, {Drive{{{0, 0}, {80, 60}}}}).design.same_data(ground));
  CHECK(graded(ground, {Drive{.path = {{5, 5}, {5, 5}}, .greatest_grade_ratio = 0.1}}).design == ground);
}

TEST_CASE("A graded drive up a plane too steep for it is cut at its top and filled at its foot alike") {
  // Geometry: 80 m at 12 % rise 9.6 m, at 8 % 6.4 m; half of the 3.2 m too much is cut at the top, half filled at the foot.
  const auto plane = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.12 * at.x; });
  const Drive drive{.path = {{10, 50}, {90, 50}}, .width_m = 4, .greatest_grade_ratio = 0.08};
  const DesignSurface surface = graded(plane, {drive});
  for (const double x_m : {10.125, 30.125, 50.125, 70.125, 89.875}) {
    INFO(x_m);
    CHECK(surface.level_m({x_m, 50}) == Approx(106 + 0.08 * (x_m - 50)).margin(1e-3));
  }
  CHECK(surface.level_m({30.125, 52.625}) == Approx(106 + 0.08 * (30.125 - 50) - 0.625 / 3).margin(1e-3));
  CHECK(surface.level_m({70.125, 47.375}) == Approx(106 + 0.08 * (70.125 - 50) + 0.625 / 3).margin(1e-3));
}

TEST_CASE("A graded drive falls by its crown from its middle to its edges") {
  const Drive drive{.path = {{10, 50}, {90, 50}}, .width_m = 6, .greatest_grade_ratio = 0.1, .crown_ratio = 0.04};
  const DesignSurface surface = graded(flat_ground(quarter_metre, 100), {drive});
  CHECK(surface.level_m({50, 50.125}) == Approx(100 - 0.005).margin(float_m));
  CHECK(surface.level_m({50, 51.125}) == Approx(100 - 0.045).margin(float_m));
  CHECK(surface.level_m({50, 47.125}) == Approx(100 - 0.115).margin(float_m));
}

TEST_CASE("A graded drive meets a pad at the pad's level") {
  const auto plane = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.05 * (at.x - 60); });
  const Drive drive{.path = {{10, 50}, {61, 50}}, .width_m = 4, .greatest_grade_ratio = 0.08};
  const DesignSurface surface = graded(plane, {Pad{{{60, 40}, {80, 40}, {80, 60}, {60, 60}}, 101, 3.0}, drive});
  CHECK(surface.level_m({60, 50}) == Approx(101).margin(0.1));
  CHECK(surface.level_m({60 - 6.25, 50}) == Approx(101 - 0.08 * 6.25).margin(0.1));
}

TEST_CASE("A retaining wall keeps the slope of a cut on its side, and the ground beyond as it lies") {
  const SitePath wall{{62, 35}, {62, 65}};
  const auto hillside = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.1 * (at.x - 50); });
  const DesignSurface open = graded(hillside, {Pad{square, 99, 3.0}});
  const DesignSurface held = graded(hillside, {Pad{square, 99, 3.0}, RetainingWall{wall}});
  CHECK(open.level_m({63, 50}) < open.existing_level_m({63, 50}) - 0.5);
  CHECK(held.level_m({63, 50}) == held.existing_level_m({63, 50}));
  CHECK(held.level_m({61, 50}) == open.level_m({61, 50}));
  CHECK(held.level_m({39, 50}) == open.level_m({39, 50}));
}

TEST_CASE("A wall on the edge of a pad needs no slope there") {
  const SitePath wall{{60, 30}, {60, 70}};
  const auto hillside = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.1 * (at.x - 50); });
  const DesignSurface held = graded(hillside, {Pad{square, 99, 3.0}, RetainingWall{wall}});
  CHECK(held.level_m({59.5, 50}) == Approx(99));
  CHECK(held.level_m({60.5, 50}) == held.existing_level_m({60.5, 50}));
}

TEST_CASE("A ditch told by level has its inverts there, and falls evenly between") {
  Swale ditch{{{20, 50}, {80, 50}}};
  ditch.inverts = SwaleInverts::by_level;
  ditch.start_level_m = 99.5;
  ditch.end_level_m = 98.9;
  const auto ground = ground_of(quarter_metre, [](SitePoint at) { return 100 + 0.02 * at.x; });
  const DesignSurface surface = graded(ground, {ditch});
  CHECK(surface.level_m({20, 50}) == Approx(99.5).margin(0.01));
  CHECK(surface.level_m({50, 50}) == Approx(99.2).margin(0.01));
  CHECK(surface.level_m({80, 50}) == Approx(98.9).margin(0.01));
}

TEST_CASE("A graded drive with a crossfall falls to its right") {
  Drive drive{{{20, 50}, {80, 50}}};  // to the east: its right is south
  drive.width_m = 6;
  drive.greatest_grade_ratio = 0.05;
  drive.crossfall_ratio = 0.02;
  const DesignSurface surface = graded(flat_ground(quarter_metre, 100), {drive});
  CHECK(surface.level_m({50, 48}) == Approx(100 - 0.04).margin(0.006));
  CHECK(surface.level_m({50, 52}) == Approx(100 + 0.04).margin(0.006));
}
