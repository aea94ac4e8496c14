#include "geom/turn/turn_ring.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

TurnRing ring_of(std::string_view id, double radius_ft, double swept_deg) {
  const Vehicle* vehicle = find(shipped_catalogs().vehicles, id);
  REQUIRE(vehicle != nullptr);
  return turn_ring(*vehicle, radius_ft * foot_m, Angle::degrees(swept_deg));
}

}  // namespace

TEST_CASE("The swept ring reaches from the inside of the last body to the front corner", "[turn]") {
  // Computed, converged integration: vehicle, radius, outer, inside after 90 and after 180 degrees; feet.
  const std::tuple<std::string_view, double, double, double, double> rings[] = {
      {"su-30", 50, 55.30, 42.01, 41.83}, {"su-40", 60, 65.33, 50.83, 50.55}, {"wb-40", 50, 54.66, 38.29, 37.27},
      {"wb-62", 50, 55.51, 28.85, 22.06}, {"wb-67", 60, 65.36, 38.39, 32.58}, {"wb-67", 100, 104.99, 83.77, 82.71}};
  for (const auto& [id, radius_ft, outer_ft, quarter_ft, half_ft] : rings) {
    INFO(id << " at " << radius_ft << " ft");
    CHECK(ring_of(id, radius_ft, 90).inside_m / foot_m == Approx(quarter_ft).margin(0.05));
    const TurnRing half = ring_of(id, radius_ft, 180);
    CHECK(half.inside_m / foot_m == Approx(half_ft).margin(0.05));
    CHECK(half.outer_m / foot_m == Approx(outer_ft).margin(0.05));
    CHECK(half.width_m() / foot_m == Approx(outer_ft - half_ft).margin(0.05));
  }
}

TEST_CASE("The front corner of a two-axle truck swings wider than its wheel", "[turn]") {
  // Computed hypot(r + 4, 24) = 43.53 ft; the design figure is remembered as 43.5 (from memory).
  CHECK(ring_of("su-30", 38, 180).outer_m / foot_m == Approx(43.53).margin(0.02));
}

TEST_CASE("A turn to the right sweeps the same ring as one to the left", "[turn]") {
  const TurnRing left = ring_of("wb-62", 50, 120), right = ring_of("wb-62", 50, -120);
  CHECK(left.inside_m == Approx(right.inside_m).margin(1e-9));
  CHECK(left.outer_m == Approx(right.outer_m).margin(1e-9));
}
