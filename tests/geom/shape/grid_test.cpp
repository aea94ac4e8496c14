#include "geom/shape/grid.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

LevelGrid tilted(int columns, int rows, double cell_m) {
  const GridFrame frame{{100, 200}, cell_m, columns, rows};
  std::vector<float> levels(frame.cells());
  for (std::size_t i = 0; i < levels.size(); ++i) {
    const SitePoint at = frame.centre(frame.cell_at_offset(i));
    levels[i] = static_cast<float>(0.5 * at.x - 0.25 * at.y);
  }
  return {frame, std::move(levels)};
}

}  // namespace

TEST_CASE("Levels of a plane come back exactly between cell centres") {
  const LevelGrid grid = tilted(20, 10, 2);
  CHECK(level_at(grid, {111.3, 207.7}) == Approx(0.5 * 111.3 - 0.25 * 207.7).margin(1e-4));
}

TEST_CASE("Outside the cell centres the nearest level holds") {
  const LevelGrid grid = tilted(4, 4, 1);
  CHECK(level_at(grid, {0, 0}) == grid.at({0, 0}));
  CHECK(level_at(grid, {1000, 1000}) == grid.at({3, 3}));
}

TEST_CASE("A grid of one cell has one level") {
  CHECK(level_at(tilted(1, 1, 5), {7, 7}) == tilted(1, 1, 5).at({0, 0}));
}

TEST_CASE("A cell's centre is in that cell, and copies share their data") {
  const LevelGrid grid = tilted(7, 5, 3);
  for (std::size_t i = 0; i < grid.frame().cells(); ++i) {
    const CellIndex cell = grid.frame().cell_at_offset(i);
    CHECK(grid.frame().cell_of(grid.frame().centre(cell)) == cell);
  }
  const LevelGrid copy = grid;
  CHECK(copy.same_data(grid));
  CHECK(tilted(7, 5, 3) == grid);
  CHECK_FALSE(tilted(7, 5, 3).same_data(grid));
}
