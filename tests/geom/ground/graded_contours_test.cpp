#include "geom/ground/graded_contours.hpp"

#include <catch2/catch.hpp>

#include "geom/site/site.hpp"

using namespace yardwright;

namespace {

constexpr double grade = 0.05, interval_m = 0.5;
constexpr double place_m = 1e-3;  ///< levels are floats, over a slope of 5 %

/// Falls to the south.
LevelGrid slope(double lift_m = 0, double from_x = 0, double to_x = 0) {
  const GridFrame frame{{0, 0}, 1, 120, 100};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    const SitePoint at = frame.centre(frame.cell_at_offset(i));
    levels.push_back(static_cast<float>(50 + grade * at.y + (at.x > from_x && at.x < to_x ? lift_m : 0)));
  }
  return {frame, std::move(levels)};
}

}  // namespace

TEST_CASE("Where a slope is lifted its contours move downhill by the lift over the grade") {
  constexpr double lift_m = 0.3;
  const DesignSurface surface{slope(), slope(lift_m, 40, 80)};
  const auto pieces = existing_contours_where_graded(surface, interval_m);
  REQUIRE_FALSE(pieces.empty());
  const auto design = contours(surface.design, interval_m);
  int compared = 0;
  for (const Contour& piece : pieces) {
    for (const SitePoint at : piece.points) {
      CHECK(surface.existing_level_m(at) == Approx(piece.level_m).margin(1e-4));
      if (at.x < 41 || at.x > 79) continue;
      for (const Contour& other : design) {
        if (other.level_m != piece.level_m) continue;
        for (const SitePoint moved : other.points) {
          if (moved.x != at.x) continue;
          CHECK(at.y - moved.y == Approx(lift_m / grade).margin(place_m));
          ++compared;
        }
      }
    }
  }
  CHECK(compared > 100);
}

TEST_CASE("On a pad the two grounds' contours differ by what the pad lifts, and off it only one is drawn") {
  Site site;
  site.ground.levels = slope();
  const Pad pad{{{40, 40}, {80, 40}, {80, 60}, {40, 60}}, 54, 3};
  site.items.push_back({{1}, "", 0, {}, pad});
  const DesignSurface surface = design_surface(site);
  const auto pieces = existing_contours_where_graded(surface, interval_m);
  int on_pad = 0;
  for (const Contour& piece : pieces) {
    for (const SitePoint at : piece.points) {
      // No slope of 3:1 reaches further than thrice the deepest cut or fill, which is 2 m.
      CHECK(contains(Polygon{{{32, 32}, {88, 32}, {88, 68}, {32, 68}}, {}}, at));
      if (!contains(Polygon{{{41, 41}, {79, 41}, {79, 59}, {41, 59}}, {}}, at)) continue;
      CHECK(surface.level_m(at) - piece.level_m == Approx(pad.level_m - (50 + grade * at.y)).margin(1e-3));
      ++on_pad;
    }
  }
  CHECK(on_pad > 30);
}

TEST_CASE("Ground that is left as it lies has no contours apart, nor has none at all") {
  CHECK(existing_contours_where_graded({slope(), slope()}, interval_m).empty());
  const LevelGrid same = slope();
  CHECK(existing_contours_where_graded({same, same}, interval_m).empty());
  CHECK(existing_contours_where_graded({}, interval_m).empty());
}
