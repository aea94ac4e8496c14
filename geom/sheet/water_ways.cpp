#include "geom/sheet/water_ways.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "geom/shape/path.hpp"
#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

constexpr double least_share = 0.004;  ///< of the ground: about a dozen ways on a plan
constexpr double least_way_mm = 8;     ///< a shorter one is noise
constexpr double arrow_spacing_mm = 26, arrow_mm = 1.7;
constexpr double over_way = 1.5;  ///< what words across one cost
constexpr double obstacle_step_mm = 2;

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

/// Fewer points of the same line; its ends are kept.
SitePath thinned(const SitePath& way, double step_m) {
  SitePath kept;
  for (const SitePoint at : way)
    if (kept.empty() || distance(kept.back(), at) >= step_m) kept.push_back(at);
  if (kept.back() != way.back()) kept.push_back(way.back());
  return kept;
}

/// Ways that share no piece: each goes on until it comes to a place of one before it.
class Joining {
 public:
  void add(std::vector<SitePath>& ways, const SitePath& way) {
    SitePath kept;
    for (const SitePoint at : way) {
      kept.push_back(at);
      if (!taken_.emplace(at.x, at.y).second) break;
    }
    if (kept.size() > 1) ways.push_back(std::move(kept));
  }

 private:
  std::set<std::pair<double, double>> taken_;
};

/// Downstream, about as far apart on the paper at every scale; one on a short line.
void add_flow_arrows(std::vector<Mark>& marks, const SitePath& way, double metres_per_mm, const Stroke& stroke) {
  const double total_m = length(way);
  const int arrows = std::max(1, static_cast<int>(total_m / (arrow_spacing_mm * metres_per_mm)));
  for (int i = 0; i < arrows; ++i) {
    const Pose pose = pose_at(way, total_m * (i + 0.6) / arrows);
    marks.push_back(arrowhead(pose.at, direction(pose.facing), arrow_mm, {stroke.colour, stroke.width_mm + 0.08, {}}));
  }
}

void add_way(PlanParts& parts, const SitePath& way, double metres_per_mm, const Stroke& stroke) {
  parts.shapes.push_back(line(way, stroke));
  add_flow_arrows(parts.shapes, way, metres_per_mm, stroke);
  parts.obstacles.push_back({thinned(way, obstacle_step_mm * metres_per_mm), over_way, false, 0, {}});
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
  std::vector<drain::Cell> heads;
  for (std::size_t i = 0; i < count; ++i) {
    if (gathers(static_cast<drain::Cell>(i)) && has_upper[i] == 0) heads.push_back(static_cast<drain::Cell>(i));
  }
  std::ranges::stable_sort(heads, {}, [&](drain::Cell head) { return flow.filled_m[static_cast<std::size_t>(head)]; });
  std::vector<SitePath> ways;
  for (const drain::Cell head : heads) {
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

const Stroke told_way_stroke{palette::water, 0.3, {}};
const Stroke gathering_way_stroke{palette::water.faded(0.7), 0.22, {}};

WaterWays water_ways(const drain::Answer& answer) {
  WaterWays ways;
  Joining joining;
  for (const drain::PitWater& pit : answer.pits) joining.add(ways.told, pit.longest_way);
  for (const drain::Pond& pond : answer.ponds) joining.add(ways.told, pond.way_out);
  const drain::Flow& flow = answer.flow;
  const double ground_m2 = static_cast<double>(flow.receiver.size()) * flow.frame.cell_area_m2();
  for (const SitePath& way : gathering_ways(flow, std::max(1.0, ground_m2 * least_share)))
    joining.add(ways.gathering, way);
  for (SitePath& way : ways.gathering) way = smoothed(way);
  return ways;
}

PlanParts way_parts(const WaterWays& ways, double metres_per_mm) {
  PlanParts parts;
  for (const SitePath& way : ways.gathering) {
    if (length(way) >= least_way_mm * metres_per_mm) add_way(parts, way, metres_per_mm, gathering_way_stroke);
  }
  for (const SitePath& way : ways.told) {
    add_way(parts, way, metres_per_mm, told_way_stroke);
    parts.shapes.push_back(arrowhead(way.back(), way.back() - way[way.size() - 2], arrow_mm, told_way_stroke));
  }
  return parts;
}

}  // namespace yardwright
