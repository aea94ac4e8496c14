#include "editor/canvas/triangles.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace yardwright;
using namespace yardwright::canvas;

namespace {

using Ring = std::vector<DrawPoint>;

double cross(DrawPoint a, DrawPoint b, DrawPoint c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

double area_of(const std::vector<Triangle>& triangles) {
  double sum = 0;
  for (const auto& [a, b, c] : triangles) sum += std::abs(cross(a, b, c)) / 2;
  return sum;
}

/// The shoelace formula.
double area_of(const Ring& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += ring[i].x * ring[(i + 1) % ring.size()].y - ring[i].y * ring[(i + 1) % ring.size()].x;
  return std::abs(twice) / 2;
}

bool is_covered(const std::vector<Triangle>& triangles, DrawPoint at) {
  for (const auto& [a, b, c] : triangles) {
    const double u = cross(a, b, at), v = cross(b, c, at), w = cross(c, a, at);
    if ((u >= 0 && v >= 0 && w >= 0) || (u <= 0 && v <= 0 && w <= 0)) return true;
  }
  return false;
}

const Ring square{{0, 0}, {10, 0}, {10, 10}, {0, 10}};
const Ring corner{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}};

}  // namespace

TEST_CASE("Triangles cover a ring's area once") {
  CHECK(area_of(triangles_of({square})) == Approx(100));
  CHECK(area_of(triangles_of({corner})) == Approx(64));
  CHECK(is_covered(triangles_of({corner}), {2, 8}));
  CHECK_FALSE(is_covered(triangles_of({corner}), {8, 8}));
}

TEST_CASE("A hole stays open, and an island in it is filled again") {
  const Ring hole{{2, 2}, {8, 2}, {8, 8}, {2, 8}}, island{{4, 4}, {6, 4}, {6, 6}, {4, 6}};
  const auto triangles = triangles_of({square, hole, island});
  CHECK(area_of(triangles) == Approx(100 - 36 + 4));
  CHECK(is_covered(triangles, {1, 5}));
  CHECK_FALSE(is_covered(triangles, {3, 5}));
  CHECK(is_covered(triangles, {5, 5}));
}

TEST_CASE("The area is kept for any star-shaped ring, wherever it lies and however it turns") {
  const unsigned seed = 71;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> radius{1, 30}, place{-500, 500};
  std::uniform_int_distribution<int> corners{3, 40};
  for (int i = 0; i < 200; ++i) {
    Ring ring;
    const DrawPoint middle{place(random), place(random)};
    const int count = corners(random);
    for (int k = 0; k < count; ++k) {
      const double turn = 6.283185307 * k / count, r = radius(random);
      ring.push_back({middle.x + r * std::cos(turn), middle.y + r * std::sin(turn)});
    }
    CHECK(area_of(triangles_of({ring})) == Approx(area_of(ring)));
  }
}

TEST_CASE("What has no area makes no triangles") {
  CHECK(triangles_of({}).empty());
  CHECK(triangles_of({{}}).empty());
  CHECK(area_of(triangles_of({{{0, 0}, {10, 0}}})) == 0);
  CHECK(area_of(triangles_of({{{0, 0}, {5, 5}, {10, 10}}})) == Approx(0).margin(1e-9));
}

TEST_CASE("Convex is one way at every corner") {
  CHECK(is_convex(square));
  CHECK_FALSE(is_convex(corner));
  CHECK(is_convex({{0, 10}, {10, 10}, {10, 0}, {0, 0}}));
}
