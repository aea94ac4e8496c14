// Lanes for trucks over a yard's free ground: what one of a width leads to, from the gates to both ends of every dump. By
// polygons: the lot shrunk and what stands grown by half the width; a lane leads wherever what is left hangs together.
// Where trucks turn and how long they are is for geom/turn. docs/methods/grow.md
#pragma once

#include <compare>

#include "geom/shape/outline.hpp"
#include "geom/site/site.hpp"

namespace yardwright::grow {

/// An end of a dump that a lane joins to some gate, or a gate that it joins to some dump.
struct LaneGoal {
  ItemId item;
  int end = 0;  ///< of a dump: 1 ahead, -1 behind; 0 of a gate
  auto operator<=>(const LaneGoal&) const = default;
};
using LaneGoals = std::vector<LaneGoal>;  ///< in order

/// Something that trucks must go around.
struct LaneBlock {
  ItemId item;
  int phase = 0;
  std::vector<Outline> parts;
};

/// Round corners are drawn around their circle, no farther off: a gap may be told too narrow by twice as much, never too wide.
inline constexpr double lane_off_m = 0.01;

class Lanes {
 public:
  /// The lot must be drawn.
  explicit Lanes(const Site& site);

  /// With some things gone.
  LaneGoals reached(double width_m, const std::vector<ItemId>& gone = {}, double off_m = lane_off_m) const;
  /// The widest that leads to all of these, between the two widths: the lower where none does; too narrow by `off_m` or less.
  double widest_m(const LaneGoals& goals, double low_m, double high_m, double off_m) const;

  /// Whether that is every end of every dump, and every gate.
  bool all_in(const LaneGoals& reached) const { return reached.size() == gates_.size() + 2 * dumps_.size(); }
  bool has_both() const { return !gates_.empty() && !dumps_.empty(); }
  const std::vector<LaneBlock>& blocks() const { return blocks_; }

 private:
  struct Door {
    ItemId item;
    Pose pose;
    double size_m = 0;  ///< a gate's width, a dump's length
  };
  Region taken(double width_m, const std::vector<ItemId>& gone, double off_m) const;

  Polygon lot_;
  std::vector<LaneBlock> blocks_;
  std::vector<Door> gates_, dumps_;
};

bool holds_all(const LaneGoals& reached, const LaneGoals& wanted);
/// Those of `wanted` that are not reached.
LaneGoals missing_of(const LaneGoals& reached, const LaneGoals& wanted);

}  // namespace yardwright::grow
