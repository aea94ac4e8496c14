#include "editor/session/shown_rows.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

using Keys = std::vector<std::string>;

/// What a card leaves out of all that the file holds of the thing.
Keys left_out(const Thing& thing) {
  const auto shown = shown_rows(thing, UnitSystem::us, shipped_catalogs());
  Keys keys;
  for (const FieldRow& row : field_rows(thing, UnitSystem::us, shipped_catalogs()))
    if (std::ranges::find(shown, row.key, &FieldRow::key) == shown.end()) keys.push_back(row.key);
  return keys;
}

}  // namespace

TEST_CASE("A bin's card asks for what its floor has") {
  Bin bin;
  CHECK(left_out(bin) == Keys{"hopper"});
  bin.floor = BinFloor::hopper;
  CHECK(left_out(bin) == Keys{"floor-height"});
  bin.floor = BinFloor::flat_channels;
  CHECK(left_out(bin) == Keys{"floor-height", "hopper"});
}

TEST_CASE("A dryer's card asks for its batch or for its rates") {
  Dryer dryer;
  CHECK(left_out(dryer) == Keys{"batch", "batch-time"});
  dryer.operation = DryerOperation::batch;
  CHECK(left_out(dryer) == Keys{"rate-5", "rate-10"});
}

TEST_CASE("Crown and side slope belong to a graded drive, doors to a building") {
  Drive drive;
  CHECK(left_out(drive) == Keys{"crown", "side-slope"});
  drive.greatest_grade_ratio = 0.05;
  CHECK(left_out(drive).empty());
  Receiving dump;
  dump.pit.pump_m3_per_s = 0.01;
  CHECK(left_out(dump).empty());
  dump.type = ReceivingKind::open_dump;
  CHECK(left_out(dump) == Keys{"door-width", "door-height", "clear-height"});
}

TEST_CASE("A pit's card asks for the floats of a pump that it has, and for nothing of a hole that is none") {
  Leg leg;
  leg.boot = {.depth_m = 2};
  CHECK(left_out(leg) == Keys{"boot-pit.pump-on", "boot-pit.pump-off"});
  leg.boot.pump_m3_per_s = 0.01;
  CHECK(left_out(leg).empty());
  leg.boot.depth_m = 0;
  CHECK(left_out(leg) == Keys{"boot-pit.rim", "boot-pit.pump", "boot-pit.pump-on", "boot-pit.pump-off"});
  Pit pit;
  pit.body = {.depth_m = 2};
  CHECK(left_out(pit) == Keys{"body.pump-on", "body.pump-off"});
}

TEST_CASE("What a card leaves out is kept") {
  Bin bin;
  bin.hopper_angle = Angle::degrees(50);
  const Thing flat = with_field(bin, "floor", "flat-channels", UnitSystem::us).value();
  CHECK(std::get<Bin>(flat).hopper_angle == bin.hopper_angle);
}
