#include "geom/grow/region_where.hpp"

#include <catch2/catch.hpp>
#include <numbers>

using namespace yardwright;
using namespace yardwright::grow;

TEST_CASE("A disc, a ring and two discs are found where they are") {
  const GridFrame frame = samples_over({{-30, -30}, {30, 30}}, 1.0);
  const auto within = [](SitePoint centre, double radius_m) {
    return [=](SitePoint at) { return distance(at, centre) < radius_m; };
  };
  CHECK(area_m2(region_where(frame, within({1.3, 2.1}, 12))) == Approx(std::numbers::pi * 144).epsilon(0.003));
  const Region ring =
      region_where(frame, [](SitePoint at) { return length(at - SitePoint{}) > 8 && length(at - SitePoint{}) < 20; });
  REQUIRE(ring.size() == 1);
  CHECK(ring[0].holes.size() == 1);
  CHECK(area_m2(ring) == Approx(std::numbers::pi * (400 - 64)).epsilon(0.003));
  const Region two = region_where(frame, [&](SitePoint at) {
    return within({-15, 0}, 7)(at) || within({15, 0}, 9)(at);
  });
  CHECK(two.size() == 2);
}

TEST_CASE("What reaches over the samples closes at their rim, and an island in a hole is a polygon of its own") {
  const GridFrame frame = samples_over({{0, 0}, {40, 40}}, 1.0);
  const Region all = region_where(frame, [](SitePoint) { return true; });
  REQUIRE(all.size() == 1);
  CHECK(area_m2(all) == Approx(1600).margin(1e-6));
  const Region target = region_where(frame, [](SitePoint at) {
    const double out_m = distance(at, {20, 20});
    return out_m < 4 || (out_m > 8 && out_m < 14);
  });
  REQUIRE(target.size() == 2);
  CHECK(target[0].holes.size() + target[1].holes.size() == 1);
}

TEST_CASE("Checkered samples part into as many pieces as there are, whichever way their saddles join") {
  const GridFrame frame{{0, 0}, 1, 12, 12};
  const Region squares = region_where(
      frame, [](SitePoint at) { return (static_cast<int>(at.x / 2) + static_cast<int>(at.y / 2)) % 2 == 0; });
  double sum_m2 = 0;
  for (const Polygon& one : squares) sum_m2 += area_m2(one);
  CHECK(sum_m2 == Approx(area_m2(united(squares))));
  CHECK(sum_m2 == Approx(121.0 / 2).epsilon(0.1));
}

TEST_CASE("Nothing holds nowhere") {
  CHECK(region_where(samples_over({{0, 0}, {10, 10}}, 1), [](SitePoint) { return false; }).empty());
  CHECK(region_where(GridFrame{}, [](SitePoint) { return true; }).empty());
}
