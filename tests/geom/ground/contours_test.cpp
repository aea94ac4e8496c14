#include "geom/ground/contours.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr double level_tolerance_m = 1e-6;
constexpr GridFrame field{{-20, -20}, 0.5, 81, 81};

bool on_rim(const GridFrame& frame, SitePoint at) {
  const SitePoint low = frame.centre({0, 0}), high = frame.centre({frame.columns - 1, frame.rows - 1});
  return at.x == low.x || at.y == low.y || at.x == high.x || at.y == high.y;
}

}  // namespace

TEST_CASE("Contours of a cone are rings of the closed form's radius") {
  // z = 10 - r / 2, so the contour of level z has the radius 2 (10 - z).
  const LevelGrid cone = ground_of(field, [](SitePoint at) { return 10 - std::hypot(at.x, at.y) / 2; });
  int rings = 0;
  for (const Contour& line : contours(cone, 1.0)) {
    const double radius_m = 2 * (10 - line.level_m);
    if (radius_m < 1 || radius_m > 19) continue;
    ++rings;
    CHECK(line.closed);
    for (const SitePoint& at : line.points) REQUIRE(std::hypot(at.x, at.y) == Approx(radius_m).margin(0.07));
  }
  CHECK(rings == 9);
}

TEST_CASE("Every point of a contour interpolates to its level, on random ground") {
  for (const unsigned seed : {1u, 2u, 3u, 4u, 5u}) {
    INFO("seed " << seed);
    const LevelGrid ground = rough_ground(field, seed, 4);
    for (const Contour& line : contours(ground, 0.3)) {
      for (const SitePoint& at : line.points)
        REQUIRE(level_at(ground, at) == Approx(line.level_m).margin(level_tolerance_m));
    }
  }
}

TEST_CASE("A contour is a ring or ends on the rim, even where whole levels lie on cell centres") {
  for (const unsigned seed : {6u, 7u, 8u}) {
    INFO("seed " << seed);
    std::mt19937 random{seed};
    std::uniform_int_distribution<int> tenths{0, 12};
    const LevelGrid steps = ground_of(field, [&](SitePoint) { return tenths(random) / 10.0; });
    for (const LevelGrid& ground : {steps, rough_ground(field, seed, 2)}) {
      const auto lines = contours(ground, 0.1);
      CHECK(lines.size() > 100);
      for (const Contour& line : lines) {
        if (line.closed) continue;
        REQUIRE(on_rim(field, line.points.front()));
        REQUIRE(on_rim(field, line.points.back()));
      }
    }
  }
}

TEST_CASE("Higher ground is on a contour's left") {
  const LevelGrid east_up = ground_of(field, [](SitePoint at) { return at.x; });
  const auto lines = contours(east_up, 5.0);
  REQUIRE(lines.size() == 8);  // -15 ... 15, and -20 + 0.25 lies below the first cell centre
  for (const Contour& line : lines) {
    CHECK(line.points.front().y > line.points.back().y);  // southward, so that the east is on its left
    CHECK(line.index == (std::lround(line.level_m) % 25 == 0));
  }
}

TEST_CASE("A saddle is parted as the bilinear surface between the cell centres is") {
  const GridFrame two{{0, 0}, 1, 2, 2};
  // South-west and north-east high: the surface's own saddle is at (3 * 3 - 0 * 1) / (3 + 3 - 0 - 1) = 1.8.
  const LevelGrid saddle{two, {3, 0, 1, 3}};
  for (const double level_m : {1.5, 2.0}) {
    INFO(level_m);
    const auto lines = contours(saddle, level_m);
    std::vector<Contour> at_level;
    for (const Contour& line : lines)
      if (line.level_m == level_m) at_level.push_back(line);
    REQUIRE(at_level.size() == 2);
    // Joined high ground leaves the south-east corner cut off: one line joins the south and the east edge.
    const bool joined = level_m < 1.8;
    const Contour& south = at_level[0].points.front().y == 0.5 ? at_level[0] : at_level[1];
    CHECK((south.points.back().x == 1.5) == joined);
  }
}

TEST_CASE("Level ground, a single cell and no ground have no contours") {
  CHECK(contours(flat_ground(field, 10), 1).empty());
  CHECK(contours(flat_ground({{0, 0}, 1, 1, 1}, 10.5), 1).empty());
  CHECK(contours({}, 1).empty());
}

TEST_CASE("The interval suits the relief in the reader's own units") {
  CHECK(sensible_interval_m(30, UnitSystem::metric) == Approx(2));
  CHECK(sensible_interval_m(1.5, UnitSystem::metric) == Approx(0.1));
  CHECK(sensible_interval_m(30, UnitSystem::us) == Approx(5 * 0.3048));
  CHECK(sensible_interval_m(3, UnitSystem::us) == Approx(0.5 * 0.3048));
  CHECK(sensible_interval_m(0, UnitSystem::us) > 0);
}
