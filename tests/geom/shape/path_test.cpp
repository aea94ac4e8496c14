#include "geom/shape/path.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

TEST_CASE("A right-angled corner rounded by R is shorter by (2 - pi/2) R") {
  const SitePath corner{{0, 0}, {100, 0}, {100, 100}};
  const SitePath round = with_fillets(corner, 30, 0.05);
  CHECK(length(corner) - length(round) == Approx((2 - M_PI / 2) * 30).margin(0.01));
  for (std::size_t i = 1; i + 1 < round.size(); ++i) {
    CHECK(distance(round[i], {70, 30}) == Approx(30).margin(1e-9));
  }
}

TEST_CASE("A fillet never eats more than half of a leg") {
  const SitePath round = with_fillets({{0, 0}, {10, 0}, {10, 100}}, 50, 0.1);
  CHECK(round.front() == SitePoint{0, 0});
  CHECK(distance(round[1], {5, 0}) < 1e-9);
}

TEST_CASE("A point by station lies on the path, facing along it, and clamps at the ends") {
  const SitePath path{{0, 0}, {10, 0}, {10, 10}};
  CHECK(pose_at(path, 5).at == SitePoint{5, 0});
  CHECK(pose_at(path, 5).facing.as_degrees() == Approx(90));
  CHECK(pose_at(path, 12).at == SitePoint{10, 2});
  CHECK(pose_at(path, 12).facing.as_degrees() == Approx(0));
  CHECK(pose_at(path, 99).at == SitePoint{10, 10});
  CHECK(pose_at(path, -1).at == SitePoint{0, 0});
}

TEST_CASE("The nearest point of a path is found within legs and at corners") {
  const SitePath path{{0, 0}, {10, 0}, {10, 10}};
  CHECK(nearest_on_path(path, {4, 3}).point == SitePoint{4, 0});
  CHECK(nearest_on_path(path, {4, 3}).distance_m == Approx(3));
  CHECK(nearest_on_path(path, {13, -4}).distance_m == Approx(5));
  CHECK(nearest_on_path(path, {11, 5}).station_m == Approx(15));
}

TEST_CASE("Paths of no or one point are harmless") {
  CHECK(length(SitePath{}) == 0);
  CHECK(pose_at({}, 3).at == SitePoint{});
  CHECK(nearest_on_path({{1, 1}}, {4, 5}).distance_m == Approx(5));
  CHECK(with_fillets({{1, 1}}, 5, 1).size() == 1);
}
