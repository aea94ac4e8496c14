#include "editor/canvas/screen_line.hpp"

#include <utility>

namespace yardwright::canvas {

namespace {

constexpr std::size_t long_line = 48;  // an icon's or a bin's outline keeps every point
constexpr float near_px = 1;

bool is_near(ImVec2 a, ImVec2 b) {
  const float dx = a.x - b.x, dy = a.y - b.y;
  return dx * dx + dy * dy < near_px * near_px;
}

bool may_be_seen(ImVec2 a, ImVec2 b, const ScreenBox& box, float margin) {
  return !((a.x < box.low.x - margin && b.x < box.low.x - margin) ||
           (a.y < box.low.y - margin && b.y < box.low.y - margin) ||
           (a.x > box.high.x + margin && b.x > box.high.x + margin) ||
           (a.y > box.high.y + margin && b.y > box.high.y + margin));
}

}  // namespace

ScreenLine thinned(ScreenLine line) {
  if (line.points.size() < long_line) return line;
  std::size_t kept = 1;
  for (std::size_t i = 1; i < line.points.size(); ++i) {
    const bool is_last = i + 1 == line.points.size();
    if (is_last || !is_near(line.points[i], line.points[kept - 1])) line.points[kept++] = line.points[i];
  }
  line.points.resize(kept);
  return line;
}

std::vector<ScreenLine> seen_parts(ScreenLine line, const ScreenBox& box, float width_px) {
  line = thinned(std::move(line));
  std::vector<ScreenLine> parts;
  const std::size_t count = line.points.size(), pieces = line.closed ? count : count - 1;
  std::size_t seen = 0;
  bool goes_on = false;
  for (std::size_t i = 0; i < pieces; ++i) {
    const ImVec2 from = line.points[i], to = line.points[(i + 1) % count];
    const bool shows = may_be_seen(from, to, box, width_px);
    if (shows && !goes_on) parts.push_back({{from}, false});
    if (shows) parts.back().points.push_back(to);
    goes_on = shows;
    seen += shows ? 1 : 0;
  }
  if (seen == pieces) return {std::move(line)};
  return parts;
}

}  // namespace yardwright::canvas
