// Where the next bin can stand on a yard of a hundred obstacles: the region with all its reasons, its best spots, and what is
// told under the pointer. Beside it the joining and taking away of the same areas by GEOS, through GDAL. Times are for
// reading, never for a test's verdict.
#include <benchmark/benchmark.h>
#include <ogr_geometry.h>

#include <memory>

#include "geom/grow/allowed_region.hpp"
#include "geom/grow/foresight.hpp"
#include "geom/grow/prover.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

constexpr std::size_t obstacles = 100;

/// The yard of sixty items, and small sheds in its south until there are a hundred things that stand.
Site hundred_obstacles() {
  scenes::SceneBuilder yard{scenes::drag_yard()};
  std::size_t standing = 0;
  for (const Item& item : yard.site().items) standing += footprint(item.thing).has_value() ? 1 : 0;
  for (; standing < obstacles; ++standing) {
    const double along_m = 22.0 * static_cast<double>(standing % 15), up_m = 18.0 * static_cast<double>(standing / 15);
    yard.add("", Building{.at = {45 + along_m, 230 + up_m}, .length_m = 5, .width_m = 4});
  }
  return yard.site();
}

struct BenchYard {
  Site site = hundred_obstacles();
  Answers answers = check(site, shipped_catalogs());
  Catalogs catalogs = in_force(site, shipped_catalogs());
  Newcomer bin = *newcomer(site, answers, catalogs.rules, Bin{}, 0);
};

const BenchYard& bench_yard() {
  static const BenchYard yard;
  return yard;
}

void region_among_a_hundred(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(allowed_region(bench_yard().bin));
}

void spots_among_a_hundred(benchmark::State& state) {
  const AllowedRegion region = allowed_region(bench_yard().bin);
  for (auto _ : state) benchmark::DoNotOptimize(best_spots(bench_yard().bin, region, 4));
}

/// At places all over the lot, as a pointer meets them.
void told_among_a_hundred(benchmark::State& state) {
  const AllowedRegion region = allowed_region(bench_yard().bin);
  int step = 0;
  for (auto _ : state) {
    const SitePoint at{5.0 + (step * 37) % 390, 5.0 + (step * 53) % 390};
    ++step;
    benchmark::DoNotOptimize(reasons_at(region, at));
    benchmark::DoNotOptimize(nearest_reasons(region, at, 2));
  }
}

OGRPolygon as_ogr(const Polygon& polygon) {
  OGRPolygon out;
  const auto add = [&](const std::vector<SitePoint>& ring) {
    OGRLinearRing line;
    for (const SitePoint& point : ring) line.addPoint(point.x, point.y);
    line.closeRings();
    out.addRing(&line);
  };
  add(polygon.outer);
  for (const auto& hole : polygon.holes) add(hole);
  return out;
}

OGRMultiPolygon as_ogr(const KeepOffs& reasons) {
  OGRMultiPolygon pieces;
  for (const KeepOff& reason : reasons) {
    for (const Polygon& piece : reason.area) {
      const OGRPolygon one = as_ogr(piece);
      pieces.addGeometry(&one);
    }
  }
  return pieces;
}

void joined_and_taken_away(benchmark::State& state) {
  const AllowedRegion region = allowed_region(bench_yard().bin);
  const Polygon lot{bench_yard().site.lot.corners, {}};
  for (auto _ : state) {
    Region pieces;
    for (const KeepOff& reason : region.reasons) pieces.insert(pieces.end(), reason.area.begin(), reason.area.end());
    benchmark::DoNotOptimize(without({lot}, united(pieces)));
  }
}

void joined_and_taken_away_by_geos(benchmark::State& state) {
  const OGRMultiPolygon pieces = as_ogr(allowed_region(bench_yard().bin).reasons);
  const OGRPolygon lot = as_ogr(Polygon{bench_yard().site.lot.corners, {}});
  for (auto _ : state) {
    const std::unique_ptr<OGRGeometry> off{pieces.UnionCascaded()};
    benchmark::DoNotOptimize(std::unique_ptr<OGRGeometry>{lot.Difference(off.get())});
  }
}

/// What looking ahead adds to every asking: the yard of sixty items, some of them planned, with a place left.
void foreseen_among_sixty(benchmark::State& state) {
  Site site = scenes::drag_yard();
  site.phases = {"today", "planned"};
  int bins = 0;
  for (Item& item : site.items) item.phase = as<Bin>(item) != nullptr && ++bins > 3 ? 1 : 0;
  const Answers answers = check(site, shipped_catalogs());
  const Catalogs catalogs = in_force(site, shipped_catalogs());
  const Thing sought = Bin{};
  const AllowedRegion region = allowed_region(*newcomer(site, answers, catalogs.rules, sought, 1));
  const std::vector<Item> later;
  const Outlook outlook{{site, answers, catalogs}, sought, &region, 1, later};
  for (auto _ : state) benchmark::DoNotOptimize(foresee(outlook));
}

BENCHMARK(region_among_a_hundred)->Unit(benchmark::kMillisecond)->UseRealTime();
BENCHMARK(spots_among_a_hundred)->Unit(benchmark::kMillisecond);
BENCHMARK(told_among_a_hundred)->Unit(benchmark::kMillisecond);
BENCHMARK(foreseen_among_sixty)->Unit(benchmark::kMillisecond);
BENCHMARK(joined_and_taken_away)->Unit(benchmark::kMillisecond);
BENCHMARK(joined_and_taken_away_by_geos)->Unit(benchmark::kMillisecond);

}  // namespace
