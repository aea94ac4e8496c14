#include "editor/session/lot_edits.hpp"

#include <cassert>

namespace yardwright::session {

namespace {

bool is_whole(const Lot& lot) { return what_is_wrong_with(Polygon{lot.corners, {}}).empty(); }

bool runs_anticlockwise(const SitePath& ring) {
  double twice_area_m2 = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const SitePoint a = ring[i], b = ring[(i + 1) % ring.size()];
    twice_area_m2 += a.x * b.y - b.x * a.y;
  }
  return twice_area_m2 > 0;
}

}  // namespace

std::pair<SitePoint, SitePoint> lot_edge(const Lot& lot, int edge) {
  assert(edge >= 0 && edge < static_cast<int>(lot.corners.size()));
  const auto first = static_cast<std::size_t>(edge);
  return {lot.corners[first], lot.corners[(first + 1) % lot.corners.size()]};
}

std::optional<int> pick_lot_edge(const Lot& lot, SitePoint point, double radius_m) {
  std::optional<int> best;
  for (int i = 0; i < static_cast<int>(lot.corners.size()); ++i) {
    const auto [from, to] = lot_edge(lot, i);
    const double away_m = nearest_on_path({from, to}, point).distance_m;
    if (away_m > radius_m) continue;
    radius_m = away_m;
    best = i;
  }
  return best;
}

std::string_view side_of(const Lot& lot, int edge) {
  const auto [from, to] = lot_edge(lot, edge);
  const bool is_anticlockwise = runs_anticlockwise(lot.corners);
  return compass_point(bearing_of(to - from).turned(Angle::degrees(is_anticlockwise ? 90 : -90)));
}

Lot with_edge(Lot lot, int edge, LotEdge across) {
  assert(edge >= 0 && edge < static_cast<int>(lot.edges.size()));
  lot.edges[static_cast<std::size_t>(edge)] = across;
  return lot;
}

std::vector<Handle> lot_handles(const Lot& lot) {
  std::vector<Handle> handles;
  for (int i = 0; i < static_cast<int>(lot.corners.size()); ++i) {
    const auto [from, to] = lot_edge(lot, i);
    handles.push_back({Grip::corner, from, i});
    handles.push_back({Grip::new_corner, between(from, to, 0.5), i + 1});
  }
  return handles;
}

Lot dragged(const Lot& lot, const Handle& handle, SitePoint to) {
  Lot other = lot;
  if (handle.grip == Grip::new_corner) {
    other.corners.insert(other.corners.begin() + handle.index, to);
    other.edges.insert(other.edges.begin() + handle.index, lot.edges[static_cast<std::size_t>(handle.index - 1)]);
  } else {
    other.corners[static_cast<std::size_t>(handle.index)] = to;
  }
  return is_whole(other) ? other : lot;
}

Lot without_corner(const Lot& lot, int corner) {
  if (lot.corners.size() <= 3) return lot;
  Lot other = lot;
  other.corners.erase(other.corners.begin() + corner);
  other.edges.erase(other.edges.begin() + corner);
  return is_whole(other) ? other : lot;
}

}  // namespace yardwright::session
