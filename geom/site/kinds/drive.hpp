// A drive or yard road along its centre-line.
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

  bool operator==(const Drive&) const = default;
};

template <MaybeConst<Drive> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its centre-line"}, self.path);
  visit(Field{"width", "width", "between its edges", Quantity::length, 1, 60}, self.width_m);
  visit(Field{"corner-radius", "corner radius", "of the centre-line at its corners", Quantity::length, 0, 200},
        self.corner_radius_m);
  visit(Field{"surface", "surface", "gravel, paved or dirt"}, self.surface);
}

}  // namespace yardwright
