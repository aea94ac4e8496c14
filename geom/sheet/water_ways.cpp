#include "geom/sheet/water_ways.hpp"

#include <algorithm>
#include <utility>

#include "geom/shape/path.hpp"
#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

constexpr double least_share = 0.004;  ///< of the ground: about a dozen ways on a plan
constexpr double least_way_mm = 8;     ///< a shorter one is noise
constexpr double arrow_spacing_mm = 28;
const Stroke way_stroke{palette::water.faded(0.45), 0.22, {}};

/// Cells step along eight directions; the mean of the neighbours along the way takes out the steps.
SitePath smoothed(const SitePath& way) {
  constexpr int half = 3;
  SitePath smooth;
  const int last = static_cast<int>(way.size()) - 1;
  for (int i = 0; i <= last; ++i) {
    const int reach = std::min({half, i, last - i});
    SiteVector sum;
    for (int j = i - reach; j <= i + reach; ++j) sum = sum + (way[static_cast<std::size_t>(j)] - SitePoint{});
    smooth.push_back(SitePoint{} + sum * (1.0 / (2 * reach + 1)));
  }
  return smooth;
}

}  // namespace

std::vector<SitePath> gathering_ways(const drain::Flow& flow, double least_area_m2) {
  const std::size_t count = flow.receiver.size();
  const auto gathers = [&](drain::Cell cell) { return flow.area_above_m2(cell) >= least_area_m2; };
  std::vector<std::uint8_t> has_upper(count, 0), drawn(count, 0);
  for (std::size_t i = 0; i < count; ++i) {
    const drain::Cell below = flow.receiver[i];
    if (below != drain::outside && gathers(static_cast<drain::Cell>(i))) has_upper[static_cast<std::size_t>(below)] = 1;
  }
  std::vector<SitePath> ways;
  for (const drain::Cell head : flow.order) {
    if (!gathers(head) || has_upper[static_cast<std::size_t>(head)] != 0) continue;
    std::vector<drain::Cell> cells;
    for (drain::Cell cell = head; cell != drain::outside; cell = flow.receiver[static_cast<std::size_t>(cell)]) {
      cells.push_back(cell);
      if (drain::on_rim(flow.frame, cell)) break;
      if (std::exchange(drawn[static_cast<std::size_t>(cell)], std::uint8_t{1}) != 0) break;
    }
    ways.push_back(drain::as_path(flow.frame, cells));
  }
  return ways;
}

PlanParts water_ways(const drain::Flow& flow, const PlanStyle& style) {
  PlanParts parts;
  const double ground_m2 = static_cast<double>(flow.receiver.size()) * flow.frame.cell_area_m2();
  for (const SitePath& way : gathering_ways(flow, std::max(1.0, ground_m2 * least_share))) {
    const double total_m = length(way);
    if (total_m < least_way_mm * style.metres_per_mm) continue;
    const SitePath smooth = smoothed(way);
    parts.shapes.push_back(line(smooth, way_stroke));
    const int arrows = std::max(1, static_cast<int>(total_m / (arrow_spacing_mm * style.metres_per_mm)));
    for (int i = 0; i < arrows; ++i) {
      const Pose pose = pose_at(smooth, length(smooth) * (i + 0.6) / arrows);
      parts.shapes.push_back(arrowhead(pose.at, direction(pose.facing), 1.5, way_stroke));
    }
  }
  return parts;
}

}  // namespace yardwright
