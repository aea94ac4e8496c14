#include "geom/grow/front.hpp"

#include <algorithm>
#include <limits>

namespace yardwright::grow {

namespace {

bool is_within(const Aims& point, const Aims& reference) {
  for (std::size_t i = 0; i < reference.size(); ++i) {
    if (!(point[i] < reference[i])) return false;
  }
  return true;
}

/// Of points within the reference, by their first `aims` aims.
double volume(std::vector<Aims> points, const Aims& reference, std::size_t aims) {
  if (points.empty()) return 0;
  const std::size_t last = aims - 1;
  std::ranges::stable_sort(points, {}, [last](const Aims& point) { return point[last]; });
  if (last == 0) return reference[0] - points.front()[0];
  double sum = 0;
  std::vector<Aims> slice;
  for (std::size_t i = 0; i < points.size(); ++i) {
    slice.push_back(points[i]);
    const double until = i + 1 < points.size() ? points[i + 1][last] : reference[last];
    if (until > points[i][last]) sum += (until - points[i][last]) * volume(slice, reference, last);
  }
  return sum;
}

/// Two aims are a stair, walked once.
double area(std::vector<Aims> points, const Aims& reference) {
  std::ranges::sort(points);
  double sum = 0, until = reference[1];
  for (const Aims& point : points) {
    if (point[1] >= until) continue;
    sum += (reference[0] - point[0]) * (until - point[1]);
    until = point[1];
  }
  return sum;
}

}  // namespace

bool dominates(const Aims& a, const Aims& b) {
  bool better = false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i] > b[i]) return false;
    better |= a[i] < b[i];
  }
  return better;
}

std::vector<std::size_t> non_dominated(const std::vector<Aims>& points) {
  std::vector<std::size_t> kept;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const auto beats = [&](const Aims& other) { return dominates(other, points[i]); };
    const auto is_first = std::ranges::find(points, points[i]) - points.begin() == static_cast<std::ptrdiff_t>(i);
    if (is_first && std::ranges::none_of(points, beats)) kept.push_back(i);
  }
  return kept;
}

double hypervolume(std::vector<Aims> points, const Aims& reference) {
  std::erase_if(points, [&](const Aims& point) { return !is_within(point, reference); });
  if (reference.size() == 2) return area(std::move(points), reference);
  return volume(std::move(points), reference, reference.size());
}

}  // namespace yardwright::grow
