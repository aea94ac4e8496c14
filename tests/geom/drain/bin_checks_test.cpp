#include "geom/drain/bin_checks.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/drain/drain.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

/// A bin on ground that falls by a grade to the south-west.
Site bin_on_slope(double grade_ratio, BinFloor floor) {
  Site site;
  site.ground.levels =
      ground_of(120, 120, 0.5, [&](SitePoint at) { return 250 + grade_ratio * (0.6 * at.x + 0.8 * at.y); });
  site.items.push_back({{1}, "North", 0, {}, Bin{.at = {30, 30}, .floor = floor}});
  return site;
}

const Finding& fall_of(const Answer& answer) {
  return *std::ranges::find_if(answer.findings,
                               [](const Finding& f) { return f.rule.starts_with("drain.slope-away"); });
}

}  // namespace

TEST_CASE("The pad that is offered makes the ground fall away from a bin by just what is asked", "[drain]") {
  for (const double grade : {0.0, 0.02, 0.06}) {
    for (const BinFloor floor : {BinFloor::flat_channels, BinFloor::raised}) {
      const Site site = bin_on_slope(grade, floor);
      const Finding before = fall_of(ask(site, design_surface(site), shipped_catalogs()));
      REQUIRE(before.verdict != Verdict::pass);
      CHECK(before.measured == Approx(-grade).epsilon(0.02));  // uphill lies 8 degrees off one of the sixteen ways
      REQUIRE(before.mends.size() == 1);
      const Site mended = apply(site, before.mends[0].edits);
      const Finding after = fall_of(ask(mended, design_surface(mended), shipped_catalogs()));
      CHECK(after.verdict == Verdict::pass);
      CHECK(after.margin < 0.004);
    }
  }
}

TEST_CASE("No pad is offered on ground too coarse to show it", "[drain]") {
  Site site = bin_on_slope(0.02, BinFloor::raised);
  site.ground.levels = {GridFrame{{0, 0}, 3, 20, 20}, std::vector<float>(400, 250)};
  CHECK_FALSE(pad_that_falls_away(site, site.items[0], design_surface(site), 0.02));
}

TEST_CASE("The fall away from a bin leaves out ways that another building closes", "[drain]") {
  Site site = bin_on_slope(0.02, BinFloor::raised);
  CHECK(fall_away(site, site.items[0], design_surface(site)).way[1].y > 30);
  const double closed_m = 30 + 10.9728 / 2 + 1;
  site.items.push_back({{2}, "Shed", 0, {}, Building{.at = {30, closed_m + 10}, .length_m = 20, .width_m = 60}});
  CHECK(fall_away(site, site.items[0], design_surface(site)).grade_ratio > -0.02);
}
