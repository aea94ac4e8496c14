#include "editor/session/snap.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Site lot_with_bin() {
  Site site;
  site.lot = rectangular_lot(100, 80);
  Bin bin;
  bin.at = {50, 40};
  site.items.push_back({{1}, "", 0, {}, bin});
  return site;
}

}  // namespace

TEST_CASE("Corners go before centres, centres before lines, lines before the grid") {
  const Site site = lot_with_bin();
  const SnapOptions options{2, 0.5, {}};
  CHECK(snapped(site, {0.5, 0.5}, options) == Snapped{{0, 0}, SnapTo::corner});
  CHECK(snapped(site, {50.5, 39.5}, options) == Snapped{{50, 40}, SnapTo::centre});
  CHECK(snapped(site, {20.2, 0.4}, options).to == SnapTo::line);
  CHECK(snapped(site, {20.2, 20.3}, options) == Snapped{{20, 20.5}, SnapTo::grid});
}

TEST_CASE("An item that is being moved does not draw the pointer") {
  const Snapped free = snapped(lot_with_bin(), {50.5, 39.5}, {2, 0, {{1}}});
  CHECK(free == Snapped{{50.5, 39.5}, SnapTo::nothing});
}

TEST_CASE("Grid steps are round in the units of the site and wide enough to see") {
  CHECK(grid_step_m(UnitSystem::us, 20, 6) == Approx(0.3048));
  CHECK(grid_step_m(UnitSystem::us, 4, 6) == Approx(5 * 0.3048));
  CHECK(grid_step_m(UnitSystem::metric, 4, 6) == Approx(2.0));
  for (const double px_per_m : {0.05, 0.7, 3.0, 11.0, 400.0})
    CHECK(grid_step_m(UnitSystem::metric, px_per_m) * px_per_m >= 6 * 0.999);
}

TEST_CASE("The next round number is itself where it is round already") {
  CHECK(round_up_to_step(1) == Approx(1));
  CHECK(round_up_to_step(20) == Approx(20));
  CHECK(round_up_to_step(21) == Approx(50));
  CHECK(round_up_to_step(0.07) == Approx(0.1));
}
