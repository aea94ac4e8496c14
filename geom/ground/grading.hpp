// Earth moved on a copy of the existing levels, one feature after another: the work behind design_surface.hpp.
// Each feature starts at the cells it lies on and spreads to neighbours for as long as it moves earth, so that
// only what it touches (and one rim of cells) is visited, and a slope ends where it first meets the ground.
#pragma once

#include <cstdint>

#include "geom/site/site.hpp"

namespace yardwright {

class Grading {
 public:
  explicit Grading(const LevelGrid& existing);

  /// No side slope of what is graded after it lies behind the wall, as seen from where the slope begins. It moves no earth
  /// itself.
  void grade(const RetainingWall& wall);
  /// The top at its level; beyond it the ground is kept within the slopes that rise and fall from the edge.
  void grade(const Pad& pad);
  /// The middle no steeper than its greatest grade, from the levels as they have become so far; as a pad beyond its edges.
  void grade(const Drive& drive);
  /// The bottom falls evenly from end to end; nothing is filled where the ground lies below it.
  void grade(const Swale& swale);
  /// The top follows the existing ground along the path, at its height above it; nothing is cut.
  void grade(const Berm& berm);

  LevelGrid levels() && { return {existing_.frame(), std::move(levels_)}; }

 private:
  struct Wanted;

  void begin_along(const SitePath& path);
  bool held_back(SitePoint from, SitePoint at) const;
  void look_at(CellIndex cell);
  template <class WantedAt>
  void spread(const WantedAt& wanted_at);

  LevelGrid existing_;
  std::vector<float> levels_;
  std::vector<std::uint32_t> visited_by_;  ///< number of the last feature that looked at the cell
  std::uint32_t feature_ = 0;
  std::vector<SitePath> walls_;
  std::vector<CellIndex> open_;  ///< looked at, not yet graded
};

}  // namespace yardwright
