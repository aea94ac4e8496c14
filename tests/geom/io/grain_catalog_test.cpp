#include "geom/io/grain_catalog.hpp"

#include <catch2/catch.hpp>

#include "geom/site/catalog/catalogs.hpp"

using namespace yardwright;

TEST_CASE("The grains have the bushel weights of the USDA and the angles of the handbooks", "[io]") {
  struct Row {
    const char* id;
    double test_weight_lb_per_bu, filling_deg, emptying_deg;
  };
  // Bushel weight: USDA (read). Filling: pile angles (read second-hand), for sorghum MWPS-13 (from memory).
  // Emptying: USDA Circular 835, 1950 (from memory).
  const Row rows[] = {{"corn", 56, 23, 27}, {"soybeans", 60, 25, 29}, {"wheat", 60, 25, 27},
                      {"oats", 32, 28, 32}, {"sorghum", 56, 29, 33},  {"barley", 48, 28, 28}};
  const auto grains = shipped_grains();
  CHECK(grains.size() == std::size(rows));
  for (const Row& row : rows) {
    INFO(row.id);
    const Grain* grain = find(grains, row.id);
    REQUIRE(grain != nullptr);
    CHECK(grain->test_weight_lb_per_bu == row.test_weight_lb_per_bu);
    CHECK(grain->filling == Angle::degrees(row.filling_deg));
    CHECK(grain->emptying == Angle::degrees(row.emptying_deg));
  }
}

TEST_CASE("Every grain stays behind at least as steep as it heaps, has a source and an id of its own", "[io]") {
  // Emptying is not flatter than filling: measured for rice at 12 to 21 % moisture, emptying 32.7 to 39.7 against
  // piling 29.6 to 36.9 degrees (read).
  const auto grains = shipped_grains();
  for (const Grain& grain : grains) {
    INFO(grain.id);
    CHECK(grain.emptying >= grain.filling);
    CHECK_FALSE(grain.source.empty());
    CHECK(find(grains, grain.id) == &grain);
  }
}

TEST_CASE("A grain that nobody ships is not found", "[io]") { CHECK(find(shipped_grains(), "moon dust") == nullptr); }
