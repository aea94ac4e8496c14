#include "editor/canvas/screen_line.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace yardwright::canvas;

namespace {

const ScreenBox window{{0, 0}, {1000, 600}};

ScreenLine wave(int points, float step_px) {
  ScreenLine line;
  for (int i = 0; i < points; ++i) {
    const auto x = static_cast<float>(i) * step_px;
    line.points.push_back({x, 300 + 50 * std::sin(x / 40)});
  }
  return line;
}

float to_nearest(ImVec2 point, const ScreenLine& line) {
  float best = 1e9F;
  for (const ImVec2 other : line.points) best = std::min(best, std::hypot(point.x - other.x, point.y - other.y));
  return best;
}

}  // namespace

TEST_CASE("A line of more points than pixels loses most of them and strays by less than a pixel") {
  const ScreenLine whole = wave(9000, 0.1F), light = thinned(whole);
  CHECK(light.points.size() < whole.points.size() / 5);
  for (const ImVec2 point : whole.points) CHECK(to_nearest(point, light) <= 1);
  CHECK(light.points.back().x == whole.points.back().x);
}

TEST_CASE("A short line keeps every point, as an icon needs") { CHECK(thinned(wave(40, 0.1F)).points.size() == 40); }

TEST_CASE("What lies in the window is one part, still closed") {
  ScreenLine square{{{10, 10}, {90, 10}, {90, 90}, {10, 90}}, true};
  const auto parts = seen_parts(square, window, 1);
  REQUIRE(parts.size() == 1);
  CHECK(parts[0].closed);
  CHECK(parts[0].points.size() == 4);
}

TEST_CASE("What lies beyond the window is left out, and a line that comes back is seen again") {
  CHECK(seen_parts({{{-50, 10}, {-10, 90}}, false}, window, 1).empty());
  const ScreenLine out_and_back{
      {{500, 100}, {900, 100}, {1100, 100}, {1200, 100}, {1200, 200}, {1100, 200}, {500, 200}}, false};
  const auto parts = seen_parts(out_and_back, window, 1);
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].points.back().x == 1100);
  CHECK(parts[1].points.front().x == 1100);
  CHECK(parts[1].points.size() == 2);
}

TEST_CASE("A piece that crosses the window from side to side is seen though both ends are not") {
  CHECK(seen_parts({{{-100, 300}, {1100, 300}}, false}, window, 1).size() == 1);
}
