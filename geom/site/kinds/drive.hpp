// A drive or yard road along its centre-line, on the ground as it lies or graded into it: kept within a grade along its
// middle, level or crowned across, and tied into the ground by side slopes. docs/methods/ground.md
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class DriveSurface : std::uint8_t { gravel, paved, dirt };
constexpr std::array<std::string_view, 3> names_of(DriveSurface) { return {"gravel", "paved", "dirt"}; }

struct Drive {
  static constexpr std::string_view key = "drive";
  static constexpr std::string_view label = "drive";

  SitePath path;
  double width_m = 14 * foot_m;
  double corner_radius_m = 15.0;
  DriveSurface surface = DriveSurface::gravel;
  double greatest_grade_ratio = 0;  ///< 0: it lies on the ground
  double crown_ratio = 0;
  double crossfall_ratio = 0;  ///< falls to its right where positive
  double side_slope_ratio = 3.0;

  bool is_graded() const { return greatest_grade_ratio > 0; }
  bool operator==(const Drive&) const = default;
};

template <MaybeConst<Drive> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its centre-line"}, self.path);
  visit(Field{"width", "width", "between its edges", Quantity::length, 1, 60}, self.width_m);
  visit(Field{"corner-radius", "corner radius", "of the centre-line at its corners", Quantity::length, 0, 200},
        self.corner_radius_m);
  visit(Field{"surface", "surface", "gravel, paved or dirt"}, self.surface);
  visit(Field{"greatest-grade", "greatest grade", "along it, cut and filled into the ground; 0 leaves it on the ground",
              Quantity::grade, 0, 0.5},
        self.greatest_grade_ratio);
  visit(Field{"crown", "crown", "fall from its middle to its edges, where it is graded", Quantity::grade, 0, 0.1},
        self.crown_ratio);
  visit(Field{"crossfall", "crossfall", "fall from its left edge to its right, where it is graded", Quantity::grade,
              -0.1, 0.1},
        self.crossfall_ratio);
  visit(Field{"side-slope", "side slope", "run for one of rise beside it, where it is graded", Quantity::side_slope,
              0.5, 20},
        self.side_slope_ratio);
}

}  // namespace yardwright
