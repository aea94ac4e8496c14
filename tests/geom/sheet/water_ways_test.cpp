#include "geom/sheet/water_ways.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <set>

using namespace yardwright;

namespace {

/// A valley whose bottom falls to the south along the middle column, its sides falling to it.
drain::Flow valley() {
  const GridFrame frame{{0, 0}, 1, 41, 60};
  std::vector<float> levels;
  for (int row = 0; row < frame.rows; ++row) {
    for (int column = 0; column < frame.columns; ++column)
      levels.push_back(static_cast<float>(100 + 0.05 * row + 0.2 * std::abs(column - 20)));
  }
  return drain::flow_over(LevelGrid{frame, std::move(levels)});
}

}  // namespace

TEST_CASE("Water of a valley gathers in one way along its bottom, down to the edge") {
  const drain::Flow flow = valley();
  const auto ways = gathering_ways(flow, 100);
  REQUIRE(ways.size() == 1);
  for (const SitePoint at : ways.front()) CHECK(std::abs(at.x - 20.5) < 1.01);
  CHECK(ways.front().front().y > 40);
  CHECK(ways.front().back().y == Approx(0.5));
}

TEST_CASE("No piece of a way is drawn twice, and every way begins where enough ground gathers") {
  const drain::Flow flow = valley();
  std::set<std::pair<double, double>> begun;
  std::size_t steps = 0;
  std::set<std::array<double, 4>> pieces;
  for (const SitePath& way : gathering_ways(flow, 4)) {
    CHECK(begun.emplace(way.front().x, way.front().y).second);
    for (std::size_t i = 1; i < way.size(); ++i, ++steps)
      pieces.insert({way[i - 1].x, way[i - 1].y, way[i].x, way[i].y});
  }
  CHECK(steps > 100);
  CHECK(pieces.size() == steps);
}

TEST_CASE("Without ground there are no ways") {
  CHECK(gathering_ways({}, 1).empty());
  CHECK(way_parts(water_ways({}), 0.5).shapes.empty());
}
