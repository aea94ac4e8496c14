#include "geom/ground/graded_line.hpp"

#include <catch2/catch.hpp>
#include <numbers>

#include "geom/shape/path.hpp"
#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame frame{{0, 0}, 1, 200, 200};

double plane_m(SitePoint at) { return 10 + 0.03 * at.x + 0.04 * at.y; }
double cone_m(SitePoint at) { return 10 - 0.05 * distance(at, {100, 100}); }

bool anywhere(SitePoint at) { return at.x > 10 && at.y > 10 && at.x < 190 && at.y < 190; }

}  // namespace

TEST_CASE("The rise of a plane is that of its formula") {
  const SiteVector rise = rise_at(ground_of(frame, plane_m), {100, 100}, 5);
  CHECK(rise.x == Approx(0.03).epsilon(1e-4));
  CHECK(rise.y == Approx(0.04).epsilon(1e-4));
}

// By hand: on a plane of 5 % a line that falls 1 % turns asin(0.2) off the contour.
TEST_CASE("On a plane a line across is straight, and falls as asked to either hand") {
  const SiteVector down = -unit(SiteVector{0.03, 0.04});
  for (const Hand hand : {Hand::left, Hand::right}) {
    const SitePath line = line_across(ground_of(frame, plane_m), {100, 100}, {hand, 0.01}, anywhere);
    REQUIRE(line.size() > 50);
    const SiteVector way = unit(line.back() - line.front());
    CHECK(dot(way, down) == Approx(0.2).epsilon(1e-3));
    CHECK((cross(down, way) > 0) == (hand == Hand::left));
    CHECK(length(line) == Approx(distance(line.front(), line.back())));
  }
}

TEST_CASE("On a cone it winds around, falling as asked all the way") {
  const SitePath line = line_across(ground_of(frame, cone_m), {150, 100}, {Hand::right, 0.005, 1, 3}, anywhere);
  REQUIRE(length(line) > 300);
  CHECK(cone_m(line.front()) - cone_m(line.back()) == Approx(0.005 * length(line)).epsilon(0.02));
}

TEST_CASE("Ground flatter than the line is to fall ends it, level ground ends the way down") {
  CHECK(line_across(ground_of(frame, plane_m), {100, 100}, {Hand::left, 0.06}, anywhere).size() == 1);
  const LevelGrid level = flat_ground(frame, 7);
  CHECK(line_across(level, {100, 100}, {}, anywhere).size() == 1);
  CHECK(line_down(level, {100, 100}, {}, anywhere).size() == 1);
}

TEST_CASE("The way down a cone leads straight from its tip") {
  const SitePath line = line_down(ground_of(frame, cone_m), {130, 100}, {}, anywhere);
  CHECK(line.back().x > 188);
  CHECK(line.back().y == Approx(100).margin(0.1));
}
