#include "geom/turn/turn.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/turn/body.hpp"
#include "tests/geom/turn/route_yard.hpp"

using namespace yardwright;
using namespace yardwright::route_yard;

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
