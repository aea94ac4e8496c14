#include "geom/turn/turn.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/turn/body.hpp"

using namespace yardwright;
using turn::ask;

namespace {

constexpr ItemId route_id{1}, thing_id{2};

/// A route with one other item, on ground that is not known.
Site yard(Route route, std::optional<Thing> thing = {}) {
  Site site;
  site.items.push_back({route_id, "Way", 0, std::nullopt, std::move(route)});
  if (thing) site.items.push_back({thing_id, "Thing", 0, std::nullopt, *thing});
  return site;
}

Findings asked(const Site& site) { return ask(site, design_surface(site), shipped_catalogs()).findings; }

const Finding& finding(const Findings& findings, std::string_view rule) {
  for (const Finding& one : findings) {
    if (one.rule == rule) return one;
  }
  FAIL("no finding of " << rule);
  return findings.front();
}

constexpr std::string_view advice = "turn.clearance-advice", advised = "turn.clearance";

/// Whether a finding says that a rule is kept. Advice that is kept is told by the rule beyond which it goes, and a caution of
/// advice says that this rule is kept.
bool says_kept(const Finding& after, std::string_view rule) {
  if (rule == advice) return after.rule == advised && after.verdict == Verdict::pass;
  if (rule == advised && after.rule == advice) return after.verdict == Verdict::caution;
  return after.rule == rule && after.verdict == Verdict::pass;
}

/// Every mend of a rule's finding, applied to the site, makes that rule pass; there is at least one. A finding that is no
/// longer told is no pass: the mend must not take away what is asked.
void every_mend_passes(const Site& site, std::string_view rule) {
  const Finding failing = finding(asked(site), rule);
  REQUIRE(failing.verdict != Verdict::pass);
  REQUIRE_FALSE(failing.mends.empty());
  for (const Mend& mend : failing.mends) {
    INFO(mend.action << " by " << mend.change);
    const Findings again = asked(apply(site, mend.edits));
    CHECK(std::ranges::any_of(again, [rule](const Finding& after) { return says_kept(after, rule); }));
    CHECK(std::ranges::none_of(
        again, [rule](const Finding& after) { return after.rule == rule && after.verdict != Verdict::pass; }));
  }
}

bool tells(const Findings& findings, std::string_view rule) {
  return std::ranges::any_of(findings, [rule](const Finding& one) { return one.rule == rule; });
}

Route straight(std::string vehicle, double length_m = 60) {
  return {.path = {{0, 0}, {length_m, 0}}, .vehicle = std::move(vehicle)};
}

/// A drive-through across the way at 30 m, facing east.
Receiving drive_through() { return {.at = {30, 0}, .facing = Bearing::degrees(90)}; }

Site on_slope(Site site, double grade) {
  GridFrame frame{{-10, -10}, 1, 120, 20};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(frame.centre(frame.cell_at_offset(i)).x * grade));
  site.ground.levels = LevelGrid{frame, levels};
  return site;
}

}  // namespace

TEST_CASE("A yard without a route is not checked, and says so", "[turn]") {
  const Findings findings = asked({});
  REQUIRE(findings.size() == 1);
  CHECK(findings.front().verdict == Verdict::not_checked);
}

TEST_CASE("A vehicle that the catalogue lacks, and a path without length, are not checked", "[turn]") {
  CHECK(finding(asked(yard(straight("hovercraft"))), "turn.radius").verdict == Verdict::not_checked);
  CHECK(finding(asked(yard(straight("p", 0))), "turn.radius").verdict == Verdict::not_checked);
}

TEST_CASE("A route tighter than the vehicle's least radius fails with the radius that it needs", "[turn]") {
  const Site site = yard({.path = {{0, 0}, {60, 0}, {60, 60}}, .vehicle = "wb-67", .corner_radius_m = 8});
  const Finding tight = finding(asked(site), "turn.radius");
  CHECK(tight.measured == Approx(8));
  CHECK(tight.required == Approx(41 * 0.3048));
  every_mend_passes(site, "turn.radius");
}

TEST_CASE("A hitch that folds past its limit is mended by wider corners", "[turn]") {
  every_mend_passes(yard({.path = {{0, 0}, {200, 0}, {0, 70}}, .vehicle = "wb-67", .corner_radius_m = 9}),
                    "turn.hitch-angle");
}

TEST_CASE("Room beside a straight way is the offset less half the width and the bin's radius", "[turn]") {
  // Geometry: 10 m - 10.9728/2 m - half of 8.5 ft.
  const Findings findings = asked(yard(straight("wb-67"), Bin{.at = {30, 10}}));
  const Finding& room = finding(findings, "turn.clearance");
  CHECK(room.verdict == Verdict::pass);
  CHECK(room.measured == Approx(10 - 5.4864 - 8.5 * 0.3048 / 2).margin(1e-9));
}

TEST_CASE("A bin in the way is moved, or the route led around it, by the least that passes", "[turn]") {
  every_mend_passes(yard(straight("su-30"), Bin{.at = {30, 4}}), "turn.clearance");
  every_mend_passes(yard({.path = {{0, 0}, {60, 0}, {60, 60}}, .vehicle = "wb-67", .corner_radius_m = 13},
                         Bin{.at = {51, 9}, .diameter_m = 4}),
                    "turn.clearance");
}

TEST_CASE("The least move of a bin leaves exactly the room that is asked for", "[turn]") {
  const Site site = yard(straight("su-30"), Bin{.at = {30, 6.8}});
  const Finding close = finding(asked(site), "turn.clearance");
  REQUIRE_FALSE(close.mends.empty());
  CHECK(close.mends.front().change == Approx(-close.margin).margin(0.011));
}

TEST_CASE("Between the rule and the advice is a caution", "[turn]") {
  const Site site = yard(straight("su-30"), Bin{.at = {30, 5.4864 + 4 * 0.3048 + 0.6}});
  CHECK(finding(asked(site), "turn.clearance-advice").verdict == Verdict::caution);
  every_mend_passes(site, "turn.clearance-advice");
}

TEST_CASE("A drive-through that the truck fits is entered without a fault", "[turn]") {
  for (const Finding& one : asked(yard(straight("hopper-semi"), drive_through()))) {
    INFO(one.title);
    CHECK((one.verdict == Verdict::pass || one.verdict == Verdict::not_checked));
  }
}

TEST_CASE("Doors want 0.6 m over the width and 0.5 m over the height", "[turn]") {
  // FAO, Farm structures in tropical climates (read): 8.5 x 13.5 ft wants 10.47 x 15.14 ft.
  Receiving dump = drive_through();
  dump.door_width_m = 10.4 * 0.3048;
  dump.door_height_m = 15.1 * 0.3048;
  const Site site = yard(straight("wb-67"), dump);
  const Findings findings = asked(site);
  CHECK(finding(findings, "turn.door-width-over").verdict == Verdict::fail);
  CHECK(finding(findings, "turn.door-width-over").mends.front().becomes ==
        Approx(10.47 * 0.3048).margin(0.01 * 0.3048));
  CHECK(finding(findings, "turn.door-height-over").mends.front().becomes ==
        Approx(15.14 * 0.3048).margin(0.01 * 0.3048));
  every_mend_passes(site, "turn.door-width-over");
  every_mend_passes(site, "turn.door-height-over");
}

TEST_CASE("A raised bed passes under 7 m and not under 21.5 ft", "[turn]") {
  // Computed: its top is at 22.03 ft; 7 m is the handbook's clear height for lift bodies (FAO, read).
  Receiving dump = drive_through();
  dump.clear_height_m = 7;
  CHECK(finding(asked(yard(straight("grain-truck-tandem"), dump)), "turn.bed-clear").verdict == Verdict::pass);
  dump.clear_height_m = 21.5 * 0.3048;
  every_mend_passes(yard(straight("grain-truck-tandem"), dump), "turn.bed-clear");
}

TEST_CASE("A drive-through beside the line of the route hits the truck with its jambs", "[turn]") {
  Receiving dump = drive_through();
  dump.at.y = 1.5;
  const Site site = yard(straight("wb-67"), dump);
  CHECK(finding(asked(site), "turn.jamb-clear").measured == 0);
  every_mend_passes(site, "turn.jamb-clear");
}

TEST_CASE("Doors and gates that a truck comes to askew may be widened until it has room") {
  Route askew = straight("wb-67");
  askew.path = {{0, -6}, {60, 6}};
  for (const Thing& thing :
       {Thing{drive_through()}, Thing{Gate{.at = {30, 0}, .facing = Bearing::degrees(90), .width_m = 3.2}}}) {
    const Site site = yard(askew, thing);
    const Finding tight = finding(asked(site), "turn.jamb-clear");
    REQUIRE(tight.verdict == Verdict::fail);
    CHECK(std::ranges::any_of(tight.mends, [](const Mend& one) { return one.action.starts_with("widen"); }));
    every_mend_passes(site, "turn.jamb-clear");
  }
}

TEST_CASE("Tyres keep off an open pit, but roll over the receiving's grate", "[turn]") {
  every_mend_passes(yard(straight("su-40"), Pit{.at = {30, 1}}), "turn.pit-edge");
  for (const Finding& one : asked(yard(straight("su-40"), drive_through()))) CHECK(one.rule != "turn.pit-edge");
}

TEST_CASE("A neighbour's edge is crossed at a gate and nowhere else", "[turn]") {
  Site site = yard(straight("su-30"));
  site.lot = {{{-20, -30}, {50, -30}, {50, 30}, {-20, 30}}, std::vector<LotEdge>(4, LotEdge::neighbour)};
  CHECK(finding(asked(site), "turn.lot-edge").verdict == Verdict::fail);
  site.lot.edges[1] = LotEdge::road;
  CHECK(finding(asked(site), "turn.lot-edge").verdict == Verdict::pass);
  site.lot.edges[1] = LotEdge::neighbour;
  site.items.push_back({thing_id, "Gate", 0, std::nullopt, Gate{.at = {50, 0}, .facing = Bearing::degrees(90)}});
  CHECK(finding(asked(site), "turn.lot-edge").verdict == Verdict::pass);
}

TEST_CASE("A gate on the way is judged by its width and its posts, a gate beside the way as nothing", "[turn]") {
  // FAO, Farm structures in tropical climates (read): 0.6 m over the width, half of it each side. A WB-67 is 8.5 ft wide.
  const double width_m = 8.5 * 0.3048;
  const auto gate = [](double wide_m, double beside_m) {
    return Gate{.at = {30, beside_m}, .facing = Bearing::degrees(90), .width_m = wide_m};
  };
  const Findings wide = asked(yard(straight("wb-67"), gate(width_m + 0.601, 0)));
  CHECK(finding(wide, "turn.door-width-over").measured == Approx(0.601).margin(1e-9));
  CHECK(finding(wide, "turn.door-width-over").verdict == Verdict::pass);
  CHECK(finding(wide, "turn.jamb-clear").measured == Approx(0.3005).margin(1e-6));
  CHECK(finding(wide, "turn.jamb-clear").verdict == Verdict::pass);
  const Site narrow = yard(straight("wb-67"), gate(width_m + 0.5, 0));
  CHECK(finding(asked(narrow), "turn.door-width-over").mends.front().becomes == Approx(width_m + 0.6).margin(1e-6));
  every_mend_passes(narrow, "turn.door-width-over");
  every_mend_passes(yard(straight("wb-67"), gate(width_m + 0.8, 0.3)), "turn.jamb-clear");
  CHECK_FALSE(tells(asked(yard(straight("wb-67"), gate(4, 8))), "turn.jamb-clear"));
  CHECK_FALSE(tells(asked(yard(straight("wb-67"), gate(4, 8))), "turn.door-width-over"));
}

TEST_CASE("A holding bin over the way is judged by its underside and its posts, beside the way as a solid thing",
          "[turn]") {
  // Geometry: posts of 0.1 m radius in the corners of a stand of 6 m leave 5.6 m; a WB-67 is 2.5908 m wide and 13.5 ft high.
  OverheadHolding bin{.at = {30, 0}, .underside_height_m = 13.5 * 0.3048 + 0.5, .stand_width_m = 6};
  const Findings over = asked(yard(straight("wb-67"), bin));
  CHECK(finding(over, "turn.jamb-clear").measured == Approx((5.6 - 2.5908) / 2).margin(1e-6));
  CHECK(finding(over, "turn.door-height-over").verdict == Verdict::pass);
  CHECK_FALSE(tells(over, "turn.clearance"));
  bin.underside_height_m -= 0.01;
  every_mend_passes(yard(straight("wb-67"), bin), "turn.door-height-over");
  bin.at.y = 5;
  const Findings beside = asked(yard(straight("wb-67"), bin));
  CHECK(finding(beside, "turn.clearance-advice").measured == Approx(5 - 3 - 2.5908 / 2).margin(1e-6));
  CHECK_FALSE(tells(beside, "turn.door-height-over"));
}

TEST_CASE("A scale is driven over where the route goes over it or stops on it, and is in the way elsewhere", "[turn]") {
  const Scale beside{.at = {30, 3.5}, .facing = Bearing::degrees(90), .width_m = 3.3};
  const Site near = yard(straight("wb-67"), beside);
  CHECK(finding(asked(near), "turn.clearance-advice").measured == Approx(3.5 - 1.65 - 2.5908 / 2).margin(1e-6));
  CHECK_FALSE(
      tells(asked(yard(straight("wb-67"), Scale{.at = {30, 0}, .facing = Bearing::degrees(90)})), "turn.clearance"));
  Route stopping = straight("wb-67");
  stopping.stops = {thing_id};
  CHECK_FALSE(tells(asked(yard(stopping, beside)), "turn.clearance-advice"));
  every_mend_passes(near, "turn.clearance-advice");
}

TEST_CASE("A conveyor over the way has to hang clear of the truck", "[turn]") {
  Conveyor over{.path = {{30, -20}, {30, 20}}, .start_height_m = 4.3, .end_height_m = 4.3};
  every_mend_passes(yard(straight("wb-67"), over), "turn.overhead-over");
  over.start_height_m = over.end_height_m = 0;
  CHECK(finding(asked(yard(straight("wb-67"), over)), "turn.overhead-over").verdict == Verdict::not_checked);
  over.start_height_m = over.end_height_m = -2;
  for (const Finding& one : asked(yard(straight("wb-67"), over))) CHECK(one.rule != "turn.overhead-over");
}

TEST_CASE("A spout over the way hangs clear of the truck once its leg is raised", "[turn]") {
  Site site = yard(straight("wb-67"), Leg{.at = {30, -12}, .discharge_height_m = 7});
  site.items.push_back({{98},
                        "Bin",
                        0,
                        std::nullopt,
                        Bin{.at = {30, 12}, .diameter_m = 6, .eave_height_m = 3, .foundation_height_m = 0}});
  site.items.push_back({{99}, "Spout", 0, std::nullopt, Spout{.from = thing_id, .to = {98}}});
  every_mend_passes(site, "turn.overhead-over");
}

TEST_CASE("A route comes to its stops in their order, or is told which it misses", "[turn]") {
  Site site = yard(straight("su-30"), Gate{.at = {10, 0}, .facing = Bearing::degrees(90)});
  site.items.push_back({{98}, "Scale", 0, std::nullopt, Scale{.at = {35, 0}, .facing = Bearing::degrees(90)}});
  Route& route = std::get<Route>(site.items.front().thing);
  const auto verdicts = [&] {
    std::vector<Verdict> all;
    for (const Finding& one : asked(site)) {
      if (one.rule == "turn.stop") all.push_back(one.verdict);
    }
    return all;
  };
  route.stops = {thing_id, {98}};
  CHECK(verdicts() == std::vector{Verdict::pass, Verdict::pass});
  route.stops = {{98}, thing_id};
  CHECK(std::ranges::count(verdicts(), Verdict::fail) == 1);
  std::get<Scale>(site.items.back().thing).at.y = 40;
  route.stops = {{98}};
  CHECK(verdicts() == std::vector{Verdict::fail});
}

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
