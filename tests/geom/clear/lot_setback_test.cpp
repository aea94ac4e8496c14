#include "geom/clear/lot_setback.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/clear/asked_yard.hpp"

using namespace yardwright;
using namespace yardwright::clear;

namespace {

/// 400 by 400 ft: road on the south, own field on the east, neighbours north and west.
Site on_lot(Thing thing) {
  Site site = yard_with({std::move(thing)});
  site.lot = rectangular_lot(400 * ft, 400 * ft);
  site.lot.edges = {LotEdge::road, LotEdge::own_field, LotEdge::neighbour, LotEdge::neighbour};
  return site;
}

}  // namespace

TEST_CASE("Every kind of lot edge has its own setback") {
  const Answer answer = asked(on_lot(bin_at(200, 60)));
  REQUIRE(finding(answer, "clear.lot-road:1") != nullptr);
  CHECK(finding(answer, "clear.lot-road:1")->measured == Approx(42 * ft));
  CHECK(finding(answer, "clear.lot-road:1")->verdict == Verdict::fail);
  CHECK(finding(answer, "clear.lot-neighbour")->measured == Approx(182 * ft));
  CHECK(finding(answer, "clear.lot-own-field")->measured == Approx(182 * ft));
  check_mends(on_lot(bin_at(200, 60)), "clear.lot-road:1", 1);
}

TEST_CASE("What reaches over an edge or stands outside is short by how far out it is") {
  const Answer over = asked(on_lot(bin_at(390, 200)));
  REQUIRE(finding(over, "clear.lot-own-field:1") != nullptr);
  CHECK(finding(over, "clear.lot-own-field:1")->measured == Approx(-8 * ft));
  const Answer outside = asked(on_lot(building_at(420, 200)));
  REQUIRE(finding(outside, "clear.lot-own-field:1") != nullptr);
  CHECK(finding(outside, "clear.lot-own-field:1")->measured == Approx(-60 * ft));
  CHECK(verdict(outside, "clear.lot-road") == "pass");
  check_mends(on_lot(bin_at(390, 200)), "clear.lot-own-field:1", 1);
  check_mends(on_lot(building_at(420, 200)), "clear.lot-own-field:1", 1);
}

// Case 37: WAC 296-826 (read): 25 ft for 1,500 gal.
TEST_CASE("Tanks keep the law's distance from the line of a neighbour") {
  const auto ammonia_at = [](double gap_ft) { return on_lot(tank_at(gap_ft + 4, 200, 1500, TankContents::ammonia)); };
  CHECK(verdict(asked(ammonia_at(24)), "clear.ammonia-line-to-2000:1") == "fail");
  CHECK(verdict(asked(ammonia_at(25)), "clear.ammonia-line-to-2000") == "pass");
  CHECK(verdict(asked(on_lot(tank_at(4 + 40, 200, 12000))), "clear.lp-to-30000:1") == "fail");
}

TEST_CASE("Without a lot the setbacks are not checked, and neither is an empty yard") {
  CHECK(verdict(asked(yard_with({bin_at(0, 0)})), "clear.lot-neighbour") == "not-checked");
  CHECK(worst(asked(Site{}).findings) == Verdict::not_checked);
}
