#include "geom/grow/region_where.hpp"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <unordered_map>

namespace yardwright::grow {

namespace {

constexpr int halvings = 8;  // of a sample's distance: 4 mm in a metre

/// Twice the number of a sample, plus one where the edge runs north from it.
using EdgeNumber = std::size_t;

/// Samples with a border of one all around where it does not hold, so that every outline closes.
class Samples {
 public:
  Samples(const GridFrame& frame, const Holds& holds)
      : frame_{grown(frame)}, holds_{holds}, within_(frame_.cells(), 0) {
    tbb::parallel_for(1, frame_.rows - 1, [&](int row) {
      for (int column = 1; column < frame_.columns - 1; ++column)
        within_[frame_.offset({column, row})] = holds(frame_.centre({column, row}));
    });
  }

  Region outlines() {
    for (int row = 0; row + 1 < frame_.rows; ++row) {
      for (int column = 0; column + 1 < frame_.columns; ++column) cut(frame_.offset({column, row}));
    }
    std::vector<SitePath> rings;
    while (!next_.empty()) rings.push_back(follow(first_left()));
    return nested(std::move(rings));
  }

 private:
  static GridFrame grown(GridFrame frame) {
    frame.south_west = frame.south_west - SiteVector{frame.cell_m, frame.cell_m};
    frame.columns += 2;
    frame.rows += 2;
    return frame;
  }

  /// Joins the crossings of the square north-east of a sample, where it holds on the left.
  void cut(std::size_t sw) {
    const auto wide = static_cast<std::size_t>(frame_.columns);
    const std::array corners{sw, sw + 1, sw + wide + 1, sw + wide};
    const std::array<EdgeNumber, 4> edges{2 * sw, 2 * (sw + 1) + 1, 2 * (sw + wide), 2 * sw + 1};
    const auto within = [&](std::size_t i) { return within_[corners[i % 4]] != 0; };
    if (within(0) == within(1) && within(1) == within(2) && within(2) == within(3)) return;
    const bool saddle = within(0) == within(2) && within(1) == within(3);
    const std::size_t step = saddle && middle_is_within(sw) ? 1 : 3;
    for (std::size_t i = 0; i < 4; ++i) {
      if (!within(i) || within(i + 1)) continue;
      std::size_t to = (i + step) % 4;
      while (within(to) || !within(to + 1)) to = (to + 1) % 4;
      starts_.push_back(edges[i]);
      next_.emplace(edges[i], edges[to]);
    }
  }

  bool middle_is_within(std::size_t sw) const {
    const SiteVector half{frame_.cell_m / 2, frame_.cell_m / 2};
    return holds_(frame_.centre(frame_.cell_at_offset(sw)) + half);
  }

  EdgeNumber first_left() {
    while (!next_.contains(starts_[done_])) ++done_;
    return starts_[done_];
  }

  SitePath follow(EdgeNumber start) {
    SitePath ring;
    EdgeNumber edge = start;
    do {
      ring.push_back(crossing(edge));
      const auto found = next_.find(edge);
      edge = found->second;
      next_.erase(found);
    } while (edge != start);
    return ring;
  }

  bool is_border(CellIndex cell) const {
    return cell.column == 0 || cell.row == 0 || cell.column == frame_.columns - 1 || cell.row == frame_.rows - 1;
  }

  SitePoint crossing(EdgeNumber edge) const {
    const std::size_t from = edge / 2, to = from + (edge % 2 == 1 ? static_cast<std::size_t>(frame_.columns) : 1);
    const CellIndex one = frame_.cell_at_offset(from), other = frame_.cell_at_offset(to);
    SitePoint within = frame_.centre(one), outside = frame_.centre(other);
    if (within_[from] == 0) std::swap(within, outside);
    if (is_border(one) || is_border(other)) return within;
    for (int i = 0; i < halvings; ++i) {
      const SitePoint middle = between(within, outside, 0.5);
      (holds_(middle) ? within : outside) = middle;
    }
    return outside;
  }

  GridFrame frame_;
  const Holds& holds_;
  std::vector<char> within_;
  std::vector<EdgeNumber> starts_;
  std::size_t done_ = 0;
  std::unordered_map<EdgeNumber, EdgeNumber> next_;
};

double signed_area_m2(const SitePath& ring) {
  double twice = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice += cross(ring[i] - ring[0], ring[(i + 1) % ring.size()] - ring[0]);
  return twice / 2;
}

/// On a straight run only its ends are needed.
SitePath without_straight_points(const SitePath& ring) {
  constexpr double straight_m2 = 1e-6;
  SitePath out;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const SitePoint before = out.empty() ? ring.back() : out.back(), after = ring[(i + 1) % ring.size()];
    if (std::abs(cross(ring[i] - before, after - ring[i])) > straight_m2) out.push_back(ring[i]);
  }
  return out;
}

}  // namespace

GridFrame samples_over(const Box& box, double apart_m) {
  const auto count = [&](double length_m) { return std::max(1, static_cast<int>(std::ceil(length_m / apart_m)) + 1); };
  return {box.low - SiteVector{apart_m / 2, apart_m / 2}, apart_m, count(box.high.x - box.low.x),
          count(box.high.y - box.low.y)};
}

Region region_where(const GridFrame& frame, const Holds& holds) {
  if (frame.columns <= 0 || frame.rows <= 0) return {};
  return Samples{frame, holds}.outlines();
}

Region nested(std::vector<SitePath> rings) {
  Region region;
  std::vector<SitePath> holes;
  for (const SitePath& ring : rings) {
    SitePath fewer = without_straight_points(ring);
    if (fewer.size() < 3) continue;
    if (signed_area_m2(fewer) > 0)
      region.push_back({std::move(fewer), {}});
    else
      holes.push_back(std::move(fewer));
  }
  for (SitePath& hole : holes) {
    Polygon* around = nullptr;
    for (Polygon& one : region) {
      const bool holds = yardwright::contains(Polygon{one.outer, {}}, hole.front());
      if (holds && (around == nullptr || area_m2({one.outer, {}}) < area_m2({around->outer, {}}))) around = &one;
    }
    if (around != nullptr) around->holes.push_back(std::move(hole));
  }
  return region;
}

}  // namespace yardwright::grow
