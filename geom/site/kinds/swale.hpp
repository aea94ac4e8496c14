// A swale or ditch along its line, cut into the ground; its bottom falls evenly between its ends, whose inverts are told
// by depth below the existing ground or by level.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class SwaleInverts : std::uint8_t { by_depth, by_level };
constexpr std::array<std::string_view, 2> names_of(SwaleInverts) { return {"by-depth", "by-level"}; }

struct Swale {
  static constexpr std::string_view key = "swale";
  static constexpr std::string_view label = "swale";

  SitePath path;
  double start_depth_m = 1 * foot_m;
  double end_depth_m = 1.5 * foot_m;
  double bottom_width_m = 4 * foot_m;
  double side_slope_ratio = 4.0;
  SwaleInverts inverts = SwaleInverts::by_depth;
  double start_level_m = 0.0;
  double end_level_m = 0.0;

  /// Between its upper edges, as it is drawn; where inverts are told by level only its bottom is known without the ground.
  double drawn_width_m() const {
    const double depth_m = inverts == SwaleInverts::by_depth ? std::max(start_depth_m, end_depth_m) : 0;
    return bottom_width_m + 2 * depth_m * side_slope_ratio;
  }
  bool operator==(const Swale&) const = default;
};

template <MaybeConst<Swale> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "the middle of its bottom, in the direction of flow"}, self.path);
  visit(Field{"inverts", "inverts", "of its bottom at its ends: told by depth, or by level"}, self.inverts);
  visit(Field{"start-depth", "depth at start", "below the existing ground there, where inverts are told by depth",
              Quantity::length, 0, 10},
        self.start_depth_m);
  visit(Field{"end-depth", "depth at end", "below the existing ground there, where inverts are told by depth",
              Quantity::length, 0, 10},
        self.end_depth_m);
  visit(Field{"start-level", "level at start", "of its bottom, where inverts are told by level", Quantity::length, -500,
              9000},
        self.start_level_m);
  visit(Field{"end-level", "level at end", "of its bottom, where inverts are told by level", Quantity::length, -500,
              9000},
        self.end_level_m);
  visit(Field{"bottom-width", "bottom width", "level part of its bottom", Quantity::length, 0, 30},
        self.bottom_width_m);
  visit(Field{"side-slope", "side slope", "run for one of rise", Quantity::side_slope, 0.5, 20}, self.side_slope_ratio);
}

}  // namespace yardwright
