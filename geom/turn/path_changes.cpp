#include "geom/turn/path_changes.hpp"

#include "geom/shape/path.hpp"

namespace yardwright::turn {

namespace {

void add_corner_move(std::vector<PathChange>& changes, const SitePath& path, std::size_t corner, SiteVector way,
                     std::string_view words) {
  changes.push_back({words, [path, corner, way](double by_m) {
                       SitePath changed = path;
                       changed[corner] = changed[corner] + way * by_m;
                       return changed;
                     }});
}

}  // namespace

void add_corner_moves(std::vector<PathChange>& changes, const SitePath& path, std::size_t corner, int ways) {
  const std::size_t last = path.size() - 1;
  if (corner == 0 || corner == last) {
    const SitePoint next = corner == 0 ? path[1] : path[last - 1];
    return add_corner_move(changes, path, corner, unit(path[corner] - next), "lengthen the end of");
  }
  for (int i = 0; i < ways; ++i)
    add_corner_move(changes, path, corner, direction(Bearing::degrees(360.0 * i / ways)), "move a corner of");
}

void add_leg_shifts(std::vector<PathChange>& changes, const SitePath& path, std::size_t leg) {
  const SiteVector left = left_of(unit(path[leg + 1] - path[leg]));
  for (const SiteVector way : {left, -left}) {
    changes.push_back({"move a leg of", [path, leg, way](double by_m) {
                         SitePath changed = path;
                         changed[leg] = changed[leg] + way * by_m;
                         changed[leg + 1] = changed[leg + 1] + way * by_m;
                         return changed;
                       }});
  }
}

void add_new_corner(std::vector<PathChange>& changes, const SitePath& path, std::size_t leg, SitePoint towards) {
  const SitePoint from = nearest_on_segment(path[leg], path[leg + 1], towards).point;
  if (from == path[leg] || from == path[leg + 1] || from == towards) return;
  changes.push_back({"add a corner to", [path, leg, from, way = unit(towards - from)](double by_m) {
                       SitePath changed = path;
                       changed.insert(changed.begin() + static_cast<std::ptrdiff_t>(leg) + 1, from + way * by_m);
                       return changed;
                     }});
}

SitePath without_repeats(const SitePath& path) {
  SitePath kept;
  for (const SitePoint& point : path) {
    if (kept.empty() || distance(kept.back(), point) > 0) kept.push_back(point);
  }
  return kept;
}

}  // namespace yardwright::turn
