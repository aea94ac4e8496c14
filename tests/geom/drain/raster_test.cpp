#include "geom/drain/raster.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;
using namespace yardwright::drain;

namespace {

const GridFrame frame{{10, 20}, 2, 30, 25};

double signed_area_m2(const SitePath& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(ring[i] - SitePoint{}, ring[(i + 1) % ring.size()] - SitePoint{});
  return twice / 2;
}

}  // namespace

TEST_CASE("A rectangle covers the cells whose centres it holds", "[drain]") {
  CHECK(cells_in(frame, rectangle({{30, 40}, {}}, 8, 4)).size() == 8);
  CHECK(cells_in(frame, rectangle({{10, 20}, {}}, 8, 8)).size() == 4);  // three quarters of it lie outside
  CHECK(cells_in(frame, rectangle({{30, 40}, {}}, 0.5, 0.5)).empty());
  CHECK(cells_in(frame, Polygon{}).empty());
}

TEST_CASE("The cells of any polygon are those whose centres it contains", "[drain]") {
  std::mt19937 random{20261125};
  std::uniform_real_distribution<double> east{5, 75}, north{15, 75};
  for (int i = 0; i < 50; ++i) {
    const Polygon triangle{
        {{east(random), north(random)}, {east(random), north(random)}, {east(random), north(random)}}, {}};
    const auto cells = cells_in(frame, triangle);
    std::size_t expected = 0;
    for (std::size_t cell = 0; cell < frame.cells(); ++cell) {
      if (contains(triangle, frame.centre(frame.cell_at_offset(cell)))) ++expected;
    }
    REQUIRE(cells.size() == expected);
  }
}

TEST_CASE("Rings around cells enclose their area, holes taken out", "[drain]") {
  std::mt19937 random{7};
  std::bernoulli_distribution coin{0.6};
  for (int i = 0; i < 20; ++i) {
    std::vector<Cell> cells;
    for (Cell cell = 0; cell < static_cast<Cell>(frame.cells()); ++cell) {
      if (coin(random)) cells.push_back(cell);
    }
    double area_m2 = 0;
    for (const SitePath& ring : rings_around(frame, cells)) area_m2 += signed_area_m2(ring);
    REQUIRE(area_m2 == Approx(static_cast<double>(cells.size()) * frame.cell_area_m2()));
  }
  CHECK(rings_around(frame, {}).empty());
}

TEST_CASE("One cell is ringed by its four corners", "[drain]") {
  const Cell cell = cell_at(frame, {15, 25});
  const auto rings = rings_around(frame, {&cell, 1});
  REQUIRE(rings.size() == 1);
  CHECK(rings[0].size() == 4);
  CHECK(cell_at(frame, {9, 25}) == outside);
}
