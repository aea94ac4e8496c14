#include "geom/ground/graded_contours.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright {

namespace {

/// From the first point to the last, around the ring from a point off the graded ground where there is one.
SitePath walked(const Contour& contour, const DesignSurface& surface) {
  SitePath path = contour.points;
  if (!contour.closed || path.empty()) return path;
  const auto off = std::ranges::find_if(
      path, [&](SitePoint at) { return std::abs(surface.level_m(at) - contour.level_m) < graded_m; });
  if (off != path.end()) std::ranges::rotate(path, off);
  path.push_back(path.front());
  return path;
}

void add_pieces(std::vector<Contour>& pieces, const Contour& contour, const DesignSurface& surface) {
  const SitePath path = walked(contour, surface);
  const auto is_graded = [&](std::size_t i) {
    return std::abs(surface.level_m(path[i]) - contour.level_m) >= graded_m;
  };
  for (std::size_t i = 0; i < path.size(); ++i) {
    if (!is_graded(i)) continue;
    std::size_t end = i + 1;
    while (end < path.size() && is_graded(end)) ++end;
    const std::size_t first = i == 0 ? 0 : i - 1, last = std::min(end, path.size() - 1);
    const auto at = [&](std::size_t k) { return path.begin() + static_cast<std::ptrdiff_t>(k); };
    if (last > first) pieces.push_back({contour.level_m, contour.index, false, SitePath(at(first), at(last + 1))});
    i = end;
  }
}

}  // namespace

std::vector<Contour> existing_contours_where_graded(const DesignSurface& surface, double interval_m) {
  std::vector<Contour> pieces;
  if (!surface.known() || surface.existing.same_data(surface.design)) return pieces;
  for (const Contour& contour : contours(surface.existing, interval_m)) add_pieces(pieces, contour, surface);
  return pieces;
}

}  // namespace yardwright
