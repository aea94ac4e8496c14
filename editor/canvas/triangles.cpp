#include "editor/canvas/triangles.hpp"

#include <algorithm>

namespace yardwright::canvas {

namespace {

struct Edge {
  DrawPoint low, high;
  double x_at(double y) const { return low.x + (high.x - low.x) * (y - low.y) / (high.y - low.y); }
};

std::vector<Edge> edges_of(const std::vector<std::vector<DrawPoint>>& rings) {
  std::vector<Edge> edges;
  for (const auto& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const DrawPoint a = ring[i], b = ring[(i + 1) % ring.size()];
      if (a.y != b.y) edges.push_back(a.y < b.y ? Edge{a, b} : Edge{b, a});
    }
  }
  std::ranges::sort(edges, {}, [](const Edge& edge) { return edge.low.y; });
  return edges;
}

std::vector<double> heights_of(const std::vector<Edge>& edges) {
  std::vector<double> heights;
  for (const Edge& edge : edges) {
    heights.push_back(edge.low.y);
    heights.push_back(edge.high.y);
  }
  std::ranges::sort(heights);
  const auto repeated = std::ranges::unique(heights);
  heights.erase(repeated.begin(), repeated.end());
  return heights;
}

void fill_band(std::vector<Triangle>& triangles, std::vector<Edge>& crossing, double low, double high) {
  const double middle = (low + high) / 2;
  std::ranges::sort(crossing, {}, [middle](const Edge& edge) { return edge.x_at(middle); });
  for (std::size_t i = 0; i + 1 < crossing.size(); i += 2) {
    const Edge &left = crossing[i], &right = crossing[i + 1];
    const DrawPoint a{left.x_at(low), low}, b{right.x_at(low), low}, c{right.x_at(high), high},
        d{left.x_at(high), high};
    triangles.push_back({a, b, c});
    triangles.push_back({a, c, d});
  }
}

}  // namespace

std::vector<Triangle> triangles_of(const std::vector<std::vector<DrawPoint>>& rings) {
  const std::vector<Edge> edges = edges_of(rings);
  const std::vector<double> heights = heights_of(edges);
  std::vector<Triangle> triangles;
  std::vector<Edge> crossing, open;
  std::size_t next = 0;
  for (std::size_t band = 0; band + 1 < heights.size(); ++band) {
    const double low = heights[band], high = heights[band + 1];
    while (next < edges.size() && edges[next].low.y <= low) open.push_back(edges[next++]);
    std::erase_if(open, [low](const Edge& edge) { return edge.high.y <= low; });
    crossing = open;
    fill_band(triangles, crossing, low, high);
  }
  return triangles;
}

bool is_convex(const std::vector<DrawPoint>& ring) {
  bool left = false, right = false;
  double turned = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const DrawVector in = ring[(i + 1) % ring.size()] - ring[i];
    const DrawVector out = ring[(i + 2) % ring.size()] - ring[(i + 1) % ring.size()];
    const double turn = cross(in, out);
    left = left || turn > 0;
    right = right || turn < 0;
    turned += std::atan2(turn, dot(in, out));
  }
  // A star turns one way too, but more than once around.
  return !(left && right) && std::abs(turned) < 7;
}

}  // namespace yardwright::canvas
