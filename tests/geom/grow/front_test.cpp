#include "geom/grow/front.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/grow/dice.hpp"

using namespace yardwright::grow;

namespace {

double factorial(int n) { return n < 2 ? 1 : n * factorial(n - 1); }

/// Every point of a lattice on the plane where the aims add up to 1.
void add_simplex(std::vector<Aims>& points, Aims begun, int left, int steps, std::size_t aims) {
  if (begun.size() + 1 == aims) {
    begun.push_back(static_cast<double>(left) / steps);
    points.push_back(begun);
    return;
  }
  for (int i = 0; i <= left; ++i) {
    Aims next = begun;
    next.push_back(static_cast<double>(i) / steps);
    add_simplex(points, next, left - i, steps, aims);
  }
}

/// What the points leave of the unit corner under that plane: towers of a lattice, counted. The cells of a lattice of m steps
/// whose upper corner lies over it: for the aims that add up to 1, volume 1/n! less the cells wholly under it.
double under_lattice(int steps, int aims) {
  double cells = 1;  // C(steps + aims - 1, aims): cells whose every corner lies under or beyond the plane of points
  for (int i = 0; i < aims; ++i) cells *= static_cast<double>(steps + aims - 1 - i);
  return cells / factorial(aims) / std::pow(steps, aims);
}

std::vector<Aims> thrown(Dice& dice, std::size_t count, std::size_t aims) {
  std::vector<Aims> points(count, Aims(aims));
  for (Aims& point : points) {
    for (double& aim : point) aim = dice.part();
  }
  return points;
}

}  // namespace

// pygmo's tutorial "Advanced hypervolume computation and analysis" (read): this set against (5, 5, 5) has 114.
TEST_CASE("The hypervolume of a published example is that of its library") {
  CHECK(hypervolume({{1, 0, 1}, {1, 1, 0}, {-1, 2, 2}}, {5, 5, 5}) == Approx(114.0).epsilon(1e-12));
}

TEST_CASE("The hypervolume of a lattice on a level front is its closed form in two to five aims") {
  for (const auto& [aims, steps] : {std::pair{2, 100}, {3, 12}, {4, 5}, {5, 3}}) {
    std::vector<Aims> points;
    add_simplex(points, {}, steps, steps, static_cast<std::size_t>(aims));
    const double full = std::pow(1.5, aims);
    INFO(aims << " aims, " << points.size() << " points");
    CHECK(hypervolume(points, Aims(static_cast<std::size_t>(aims), 1.5)) ==
          Approx(full - under_lattice(steps, aims)).epsilon(1e-12));
  }
  // With more points the front itself: half of the unit square lies under it.
  std::vector<Aims> fine;
  add_simplex(fine, {}, 2000, 2000, 2);
  CHECK(hypervolume(fine, {1, 1}) == Approx(0.5).epsilon(1e-3));
}

TEST_CASE("The hypervolume is the share of thrown places that some point dominates") {
  for (const std::uint64_t seed : {1u, 2u, 3u}) {
    INFO("seed " << seed);
    Dice dice{seed};
    const std::vector<Aims> points = thrown(dice, 12, 4);
    int hit = 0;
    const int throws = 40000;
    for (const Aims& place : thrown(dice, throws, 4)) {
      hit += std::ranges::any_of(points, [&](const Aims& point) { return dominates(point, place); }) ? 1 : 0;
    }
    const double share = hypervolume(points, {1, 1, 1, 1});
    const double sigma = std::sqrt(share * (1 - share) / throws);
    CHECK(std::abs(static_cast<double>(hit) / throws - share) < 4 * sigma);
  }
}

TEST_CASE("What is dominated adds nothing, and every order of the points tells the same") {
  Dice dice{7};
  for (std::size_t aims = 2; aims <= 5; ++aims) {
    std::vector<Aims> points = thrown(dice, 14, aims), kept;
    const Aims reference(aims, 0.9);
    const double all = hypervolume(points, reference);
    for (const std::size_t i : non_dominated(points)) kept.push_back(points[i]);
    CHECK(hypervolume(kept, reference) == Approx(all).epsilon(1e-12));
    std::ranges::reverse(points);
    CHECK(hypervolume(points, reference) == Approx(all).epsilon(1e-12));
  }
}

TEST_CASE("Of points the non-dominated are kept, of equal ones the first") {
  const std::vector<Aims> points{{1, 4}, {2, 2}, {4, 1}, {3, 3}, {2, 2}, {1, 5}};
  CHECK(non_dominated(points) == std::vector<std::size_t>{0, 1, 2});
  CHECK(non_dominated({}).empty());
  CHECK_FALSE(dominates({1, 1}, {1, 1}));
  CHECK(hypervolume({}, {1, 1}) == 0);
  CHECK(hypervolume({{1, 0}}, {1, 1}) == 0);
}

// Reference values that implementations of SplitMix64 in many languages are tested against (read in several): seed 1234567.
TEST_CASE("The dice throw what SplitMix64 throws") {
  Dice dice{1234567};
  CHECK(dice.next() == 6457827717110365317u);
  CHECK(dice.next() == 3203168211198807973u);
  CHECK(dice.next() == 9817491932198370423u);
  CHECK(dice.next() == 4593380528125082431u);
  CHECK(dice.next() == 16408922859458223821u);
  for (int i = 0; i < 1000; ++i) CHECK(dice.below(7) < 7);
}
