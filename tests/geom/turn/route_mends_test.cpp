// Grades, legs and stops of a route, and the mends of them.
#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "tests/geom/turn/route_yard.hpp"

using namespace yardwright;
using namespace yardwright::route_yard;

TEST_CASE("A grade of ten percent passes and more is a caution", "[turn]") {
  // NRCS practice 560, one state's version (read).
  CHECK(finding(asked(on_slope(yard(straight("p")), 0.0999)), "turn.grade").verdict == Verdict::pass);
  CHECK(finding(asked(on_slope(yard(straight("p")), 0.101)), "turn.grade").verdict == Verdict::caution);
  CHECK(finding(asked(on_slope(yard(straight("p")), 0.101)), "turn.grade").measured == Approx(0.101));
  CHECK(finding(asked(yard(straight("p"))), "turn.grade").verdict == Verdict::not_checked);
}

namespace {

/// A ridge of 12 % up and down, 60 m long each way, across the way.
Site over_ridge(Site site) {
  const GridFrame frame{{-40, -40}, 1, 240, 80};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    const double x = frame.centre(frame.cell_at_offset(i)).x;
    levels.push_back(static_cast<float>(300 + 0.12 * std::max(0.0, 60 - std::abs(x - 80))));
  }
  site.ground.levels = LevelGrid{frame, levels};
  return site;
}

}  // namespace

TEST_CASE("A way too steep is mended by grading the drive under it, to just under the greatest grade") {
  const Drive drive{.path = {{0, 0}, {160, 0}}};
  const Site site = over_ridge(yard(straight("p", 160), drive));
  const Finding steep = finding(asked(site), "turn.grade");
  CHECK(steep.measured == Approx(0.12).margin(1e-4));
  REQUIRE(steep.mends.size() == 1);
  CHECK(steep.mends.front().action == "ease the grade of Thing");
  CHECK(steep.mends.front().becomes == Approx(0.1).margin(0.002));
  CHECK(steep.mends.front().becomes < 0.1);
  every_mend_passes(site, "turn.grade");
}

TEST_CASE("A way too steep over open ground is mended by a graded drive along it") {
  const Site site = over_ridge(yard(straight("p", 160)));
  CHECK(finding(asked(site), "turn.grade").mends.front().action == "ease the grade of Way, on a new drive");
  every_mend_passes(site, "turn.grade");
}

TEST_CASE("Where a hill leaves no way between the ends at that grade, the mend says that the ends are moved too") {
  const Site site = on_slope(yard(straight("p"), Drive{.path = {{0, 0}, {60, 0}}}), 0.13);
  const Finding steep = finding(asked(site), "turn.grade");
  REQUIRE(steep.mends.size() == 1);
  CHECK(steep.mends.front().action.ends_with("cutting and filling at its ends,"));
  every_mend_passes(site, "turn.grade");
}

TEST_CASE("A graded drive that is still too steep is graded gentler, and a way beyond its end wants more than it") {
  Drive drive{.path = {{0, 0}, {160, 0}}, .greatest_grade_ratio = 0.11};
  every_mend_passes(over_ridge(yard(straight("p", 160), drive)), "turn.grade");
  drive.path.back().x = 80;
  every_mend_passes(over_ridge(yard(straight("p", 160), drive)), "turn.grade");
}

TEST_CASE("A route whose legs are too short for the radius is mended by moving its corners") {
  // A jog, a narrow loop back, a short end, and a corner that was clicked twice nearly at the same place.
  const SitePath paths[] = {{{0, 0}, {60, 0}, {63, 8}, {120, 8}},
                            {{0, 0}, {80, 0}, {80, 14}, {0, 14}},
                            {{0, 0}, {60, 0}, {60, 10}},
                            {{0, 0}, {60, 0}, {60.5, 0.5}, {61, 60}}};
  for (const SitePath& path : paths) {
    INFO("corners " << path.size() << ", third at " << path[2].x << ", " << path[2].y);
    const Site site = yard({.path = path, .vehicle = "wb-67", .corner_radius_m = 15});
    CHECK(finding(asked(site), "turn.radius").verdict == Verdict::fail);
    every_mend_passes(site, "turn.radius");
  }
}

TEST_CASE("A short leg of a route is mended by no more than lengthening it by what its arc lacks") {
  // Geometry: a square corner of 41 ft wants 82 ft on either leg, half of it for the arc; a wider corner wants less.
  const Site site = yard({.path = {{0, 0}, {60, 0}, {60, 20}}, .vehicle = "wb-67", .corner_radius_m = 15});
  const Finding tight = finding(asked(site), "turn.radius");
  REQUIRE(tight.mends.size() == 1);
  CHECK(tight.mends.front().change < 82 * 0.3048 - 20);
}

TEST_CASE("A route that turns straight back has no mend by its corners, and says what to do") {
  const Finding back = finding(asked(yard({.path = {{0, 0}, {60, 0}, {0, 0}}, .vehicle = "wb-67"})), "turn.radius");
  CHECK(back.mends.empty());
  CHECK(back.note.find("draw the corners farther apart") != std::string::npos);
}

TEST_CASE("A route that misses a stop is led to it by the least change that can be driven") {
  const Pit pit{.at = {60, 12}};
  Route route = straight("su-30", 140);
  route.stops = {thing_id};
  const Site beside = yard(route, pit);
  every_mend_passes(beside, "turn.stop");
  // Geometry: 12 m less half of the pit and the 10 ft that a spout reaches.
  const Finding missed = finding(asked(beside), "turn.stop");
  CHECK(missed.mends.front().change >= 12 - pit.body.length_m / 2 - 3.048 - 0.01);
  route.path = {{0, 0}, {80, 0}, {80, 80}};
  every_mend_passes(yard(route, Pit{.at = {60, 30}}), "turn.stop");
  route.path = {{0, 0}, {30, 0}};
  every_mend_passes(yard(route, Pit{.at = {60, 0}}), "turn.stop");
}

TEST_CASE("Stops in another order than the way comes to them are put in its order") {
  Route route = straight("su-30");
  route.stops = {{98}, thing_id};
  Site site = yard(route, Gate{.at = {10, 0}, .facing = Bearing::degrees(90)});
  site.items.push_back({{98}, "Scale", 0, std::nullopt, Scale{.at = {35, 0}, .facing = Bearing::degrees(90)}});
  const Findings findings = asked(site);
  const auto missed = std::ranges::find_if(
      findings, [](const Finding& one) { return one.rule == "turn.stop" && one.verdict == Verdict::fail; });
  REQUIRE(missed != findings.end());
  REQUIRE(missed->mends.size() == 1);
  for (const Finding& one : asked(apply(site, missed->mends.front().edits))) {
    if (one.rule == "turn.stop") CHECK(one.verdict == Verdict::pass);
  }
}

TEST_CASE("A stop that no small change leads to has no mend, and says what to do") {
  Route route = straight("su-30");
  route.stops = {thing_id};
  const Finding missed = finding(asked(yard(route, Pit{.at = {30, 900}})), "turn.stop");
  CHECK(missed.mends.empty());
  CHECK(missed.note.find("draw it anew") != std::string::npos);
}
