#include "geom/grow/packing.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/shape/innermost.hpp"
#include "geom/shape/spread.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

PackingTask task_in(Region region, double apart_m) { return {std::move(region), {disc({}, apart_m, 720)}}; }

void check_is_packing(const PackingTask& task, const std::vector<SitePoint>& places) {
  for (std::size_t i = 0; i < places.size(); ++i) {
    CHECK(depth_within_m(task.region, places[i]) >= -1e-6);
    for (std::size_t j = 0; j < i; ++j)
      CHECK(depth_within_m(task.conflict, SitePoint{} + (places[i] - places[j])) <= 1e-9);
  }
}

/// Sought until there are `wanted`, then stopped.
std::vector<SitePoint> sought(const PackingTask& task, std::size_t wanted) {
  std::stop_source enough;
  const auto found = [&](std::size_t places) {
    if (places >= wanted) enough.request_stop();
  };
  return packed(task, {.seed = 7, .tries = 300, .stop = enough.get_token(), .found = found});
}

}  // namespace

// E. Friedman, Circles in Squares (erich-friedman.github.io/packing/cirinsqu, read): side of the smallest known square for
// n unit circles. Their centres lie in a square two units smaller, two units apart.
TEST_CASE("Circles in a square come within 2 % of the best known packings") {
  const double r2 = std::sqrt(2.0), r3 = std::sqrt(3.0), r6 = std::sqrt(6.0);
  const double side[] = {2 + r2,
                         2 + 1 / r2 + r6 / 2,
                         4,
                         2 + 2 * r2,
                         2 + 12 / std::sqrt(13.0),
                         4 + r3,
                         2 + r2 + r6,
                         6,
                         6.747,
                         7.022,
                         2 + 15 * std::sqrt(2.0 / 17),
                         7.463,
                         6 + r3,
                         4 + r2 + r6,
                         8,
                         8.532,
                         2 + 24 / std::sqrt(13.0),
                         8.907,
                         130.0 / 17 + 16.0 / 17 * r2};
  std::size_t n = 2;
  for (const double s : side) {
    // Circles 2 % smaller, in the same square.
    const double radius = 0.98, centres = s - 2 * radius;
    const PackingTask task = task_in({rectangle({{0, 0}, Bearing::degrees(0)}, centres, centres)}, 2 * radius);
    const auto places = sought(task, n);
    INFO(n << " circles");
    CHECK(places.size() >= n);
    CHECK(static_cast<int>(places.size()) <= most_places(task));
    check_is_packing(task, places);
    ++n;
  }
}

// E. Friedman, Circles in Circles (a copy of the same collection's page, read): radius of the smallest known circle.
TEST_CASE("Circles in a circle come within 2 % of the best known packings") {
  const double around[] = {2,     2.154, 2.414, 2.701, 3,     3,     3.304, 3.613, 3.813, 3.923,
                           4.029, 4.236, 4.328, 4.521, 4.615, 4.792, 4.863, 4.863, 5.122};
  std::size_t n = 2;
  for (const double r : around) {
    const double radius = 0.98;
    const PackingTask task = task_in({disc({0, 0}, r - radius, 180)}, 2 * radius);
    const auto places = sought(task, n);
    INFO(n << " circles");
    CHECK(places.size() >= n);
    CHECK(static_cast<int>(places.size()) <= most_places(task));
    check_is_packing(task, places);
    ++n;
  }
}

TEST_CASE("The same seed packs the same places, and a stop gives what was found so far") {
  const PackingTask task = task_in({rectangle({{0, 0}, Bearing::degrees(0)}, 40, 30)}, 8);
  CHECK(packed(task, {.seed = 3}) == packed(task, {.seed = 3}));
  std::stop_source stop;
  stop.request_stop();
  CHECK(packed(task, {.stop = stop.get_token()}).size() <= packed(task).size());
}

TEST_CASE("Nothing is packed where there is no room, one where there is hardly any") {
  CHECK(packed({}, {}).empty());
  CHECK(most_places({}) == 0);
  const PackingTask tight = task_in({rectangle({{0, 0}, Bearing::degrees(0)}, 0.5, 0.5)}, 8);
  CHECK(packed(tight).size() == 1);
  CHECK(most_places(tight) == 1);
}

TEST_CASE("Places in two parts keep apart across the gap, and a conflict that is no disc is kept") {
  const Region two{rectangle({{0, 0}, Bearing::degrees(0)}, 20, 4), rectangle({{6, 0}, Bearing::degrees(0)}, 20, 4)};
  const PackingTask long_ones{two, {rectangle({{0, 0}, Bearing::degrees(0)}, 12, 5)}};
  const auto places = packed(long_ones);
  check_is_packing(long_ones, places);
  CHECK(places.size() == 16);  // 6 apart along and 2.5 across: 4 by 2 on each strip
}
