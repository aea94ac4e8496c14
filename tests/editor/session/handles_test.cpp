#include "editor/session/handles.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Handle first(const Thing& thing, Grip grip) {
  for (const Handle& handle : handles_of(thing)) {
    if (handle.grip == grip) return handle;
  }
  FAIL("no such handle");
  return {};
}

Building building() {
  Building made;
  made.at = {10, 10};
  made.facing = Bearing::degrees(90);
  made.length_m = 20;
  made.width_m = 8;
  return made;
}

}  // namespace

TEST_CASE("Dragging a bin's wall changes its diameter and not its place") {
  Bin bin;
  bin.at = {5, 5};
  const Bin after = std::get<Bin>(dragged(bin, first(bin, Grip::wall), {5 + 3, 5 + 4}));
  CHECK(after.diameter_m == Approx(10));
  CHECK(after.at == bin.at);
}

TEST_CASE("Dragging a side of a box keeps the far side where it is") {
  const Building before = building();
  const Building after = std::get<Building>(dragged(before, first(before, Grip::length_side), {30, 10}));
  CHECK(after.length_m == Approx(30));
  CHECK(after.at.x - after.length_m / 2 == Approx(before.at.x - before.length_m / 2));
  CHECK(after.width_m == before.width_m);
}

TEST_CASE("The turning grip makes the thing face the pointer") {
  const Building after = std::get<Building>(dragged(building(), first(building(), Grip::turn), {10, -50}));
  CHECK(after.facing.as_degrees() == Approx(180));
}

TEST_CASE("Sizes stay within the limits of their fields") {
  Bin bin;
  CHECK(std::get<Bin>(dragged(bin, first(bin, Grip::wall), {0, 0})).diameter_m == Approx(1));
  CHECK(std::get<Bin>(dragged(bin, first(bin, Grip::wall), {5000, 0})).diameter_m == Approx(60));
}

TEST_CASE("A line's corner moves, and the dot on its middle becomes a new corner") {
  Drive drive;
  drive.path = {{0, 0}, {20, 0}};
  const Drive moved_corner = std::get<Drive>(dragged(drive, first(drive, Grip::corner), {0, 5}));
  CHECK(moved_corner.path == SitePath{{0, 5}, {20, 0}});
  const Drive longer = std::get<Drive>(dragged(drive, first(drive, Grip::new_corner), {10, 7}));
  CHECK(longer.path == SitePath{{0, 0}, {10, 7}, {20, 0}});
}

TEST_CASE("Every kind's handles can be dragged without harm, drawn or not") {
  for (const Thing& thing : every_kind()) {
    for (const Handle& handle : handles_of(thing)) CHECK(kind_key(dragged(thing, handle, {3, 4})) == kind_key(thing));
  }
}

TEST_CASE("A thing is turned by whole steps about its place") {
  const SitePoint at = turned_in_steps({10, 10}, {10 + 20, 10 + 0.3}, Angle::degrees(1));
  CHECK(bearing_of(at - SitePoint{10, 10}).as_degrees() == Approx(89));
  CHECK(distance(at, {10, 10}) == Approx(distance(SitePoint{30, 10.3}, {10, 10})));
  CHECK(bearing_of(turned_in_steps({0, 0}, {1, 9}, Angle::degrees(15)) - SitePoint{}).as_degrees() ==
        Approx(0).margin(1e-9));
}
