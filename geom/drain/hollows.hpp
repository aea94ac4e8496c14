// The hollows inside one depression and the water that stands in them. Each fills by itself up to its brim, the lowest
// way into the hollow beside it; then it spills into that one; once both stand at the brim they are one hollow, which
// fills on. What the outermost cannot hold leaves over the depression's spill. Levels in metres, volumes in m3.
// The flow must outlive it.
// Method: a tree of merging hollows, filled from its leaves (Barnes, Callaghan, Wickert 2020, fill-spill-merge).
#pragma once

#include <array>

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

using HollowIndex = std::int32_t;
inline constexpr HollowIndex no_hollow = -1;

struct Hollow {
  HollowIndex around = no_hollow;                          ///< the one that it is a part of
  std::array<HollowIndex, 2> parts{no_hollow, no_hollow};  ///< that meet in it at their brim
  HollowIndex spills_into = no_hollow;  ///< the innermost hollow over its brim; none of the outermost
  double brim_m = 0;
  double holds_m3 = 0;   ///< to the brim, its parts with it
  double stands_m3 = 0;  ///< what it holds now, its parts with it

  bool is_innermost() const { return parts[0] == no_hollow; }
  /// Sums of parts differ from the whole in their last digits.
  bool is_full() const { return stands_m3 >= holds_m3 * (1 - 1e-12); }
};

class Hollows {
 public:
  /// Dry, of one depression.
  Hollows(const Flow& flow, std::int32_t depression);

  const std::vector<Hollow>& all() const { return hollows_; }
  /// The innermost hollow at a cell of the depression; none elsewhere.
  HollowIndex innermost_at(Cell cell) const;

  /// Lets a depth of runoff come from every cell of the depression's catchment; gives back what spills out.
  double rain_on(std::span<const Cell> catchment, double runoff_m);
  /// Puts a volume into an innermost hollow; gives back what spills out.
  double pour(HollowIndex innermost, double volume_m3);

  /// Of the water in the hollow at a cell of the depression, which may lie deeper than the cell: its ground where dry.
  double level_m(Cell cell) const;

 private:
  class Builder;
  void add_water(HollowIndex hollow, double volume_m3);
  HollowIndex beside(HollowIndex hollow) const;
  HollowIndex pooled_at(Cell cell) const;
  bool lies_in(HollowIndex inner, HollowIndex outer) const;

  const Flow& flow_;
  std::vector<Cell> cells_;           ///< of the depression, lowest first
  std::vector<HollowIndex> at_cell_;  ///< innermost, of each cell of the grid
  std::vector<Hollow> hollows_;       ///< parts before what they are part of
};

}  // namespace yardwright::drain
