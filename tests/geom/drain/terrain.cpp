#include "tests/geom/drain/terrain.hpp"

#include <algorithm>
#include <cmath>
#include <queue>
#include <random>
#include <sstream>

namespace yardwright::drain {

std::vector<int> numbers(std::initializer_list<std::string> rows) {
  std::vector<int> cells;
  for (auto row = rows.end(); row != rows.begin();) {
    std::istringstream text{*--row};
    for (int number = 0; text >> number;) cells.push_back(number);
  }
  return cells;
}

LevelGrid terrain(std::initializer_list<std::string> rows, double cell_m) {
  const std::vector<int> cells = numbers(rows);
  const int high = static_cast<int>(rows.size());
  return {GridFrame{{0, 0}, cell_m, static_cast<int>(cells.size()) / high, high}, {cells.begin(), cells.end()}};
}

LevelGrid ground_of(int columns, int rows, double cell_m, const std::function<double(SitePoint)>& level_m) {
  const GridFrame frame{{0, 0}, cell_m, columns, rows};
  std::vector<float> levels_m;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels_m.push_back(static_cast<float>(level_m(frame.centre(frame.cell_at_offset(i)))));
  return {frame, std::move(levels_m)};
}

LevelGrid two_pit_bowl() {
  return terrain({"-9 -9 -9 -9 -9 -9 -9 -9 -9 -9", "-9 9 9 9 9 9 9 9 9 -9", "-9 9 8 8 8 8 7 6 9 -9",
                  "-9 9 8 7 8 7 6 5 9 -9", "-9 9 8 7 8 6 5 4 9 -9", "-9 9 8 8 8 5 4 3 9 -9", "-9 9 7 6 5 4 3 2 9 -9",
                  "-9 9 7 6 5 4 3 1 9 -9", "-9 9 9 9 9 9 9 9 9 -9", "-9 -9 -9 -9 -9 -9 -9 -9 -9 -9"});
}

LevelGrid rough_ground(int columns, int rows, unsigned seed) {
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> noise{-0.05, 0.05}, phase{0, 6.28};
  const double a = phase(random), b = phase(random), c = phase(random);
  std::vector<float> levels;
  for (int i = 0; i < columns * rows; ++i) {
    const double x = i % columns, y = i / columns;
    const double hills = 0.8 * std::sin(x / 11 + a) * std::cos(y / 9 + b) + 0.3 * std::sin((x + y) / 4 + c) + 0.005 * x;
    levels.push_back(static_cast<float>(std::round((300 + hills + noise(random)) * 100) / 100));
  }
  return {GridFrame{{0, 0}, 1, columns, rows}, std::move(levels)};
}

std::vector<float> textbook_filled_m(const LevelGrid& levels) {
  const GridFrame& frame = levels.frame();
  using Waiting = std::pair<float, std::size_t>;
  std::priority_queue<Waiting, std::vector<Waiting>, std::greater<>> heap;
  std::vector<float> filled_m = levels.values();
  std::vector<bool> seen(filled_m.size());
  for (std::size_t i = 0; i < filled_m.size(); ++i) {
    const CellIndex at = frame.cell_at_offset(i);
    if (at.column > 0 && at.row > 0 && at.column < frame.columns - 1 && at.row < frame.rows - 1) continue;
    heap.emplace(filled_m[i], i);
    seen[i] = true;
  }
  while (!heap.empty()) {
    const auto [water_m, cell] = heap.top();
    heap.pop();
    const CellIndex at = frame.cell_at_offset(cell);
    for (int i = 0; i < 9; ++i) {
      const CellIndex next{at.column + i % 3 - 1, at.row + i / 3 - 1};
      if (!frame.contains(next) || seen[frame.offset(next)]) continue;
      const std::size_t offset = frame.offset(next);
      seen[offset] = true;
      filled_m[offset] = std::max(filled_m[offset], water_m);
      heap.emplace(filled_m[offset], offset);
    }
  }
  return filled_m;
}

}  // namespace yardwright::drain
