// A pipe that carries water under a drive or bank, from its upper to its lower end.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class CulvertInlet : std::uint8_t {
  concrete_square,      ///< square edge in a headwall
  concrete_groove,      ///< groove end in a headwall
  concrete_projecting,  ///< groove end out of the bank
  metal_headwall,
  metal_mitred,  ///< cut to the slope of the bank
  metal_projecting
};
constexpr std::array<std::string_view, 6> names_of(CulvertInlet) {
  return {"concrete-square", "concrete-groove", "concrete-projecting",
          "metal-headwall",  "metal-mitred",    "metal-projecting"};
}

struct Culvert {
  static constexpr std::string_view key = "culvert";
  static constexpr std::string_view label = "culvert";

  SitePath path;
  double diameter_m = 18 * 0.0254;
  double start_depth_m = 0.6;
  double end_depth_m = 0.0;
  double roughness_n = 0.024;
  CulvertInlet inlet = CulvertInlet::metal_projecting;
  double tailwater_m = 0.0;

  bool operator==(const Culvert&) const = default;
};

template <MaybeConst<Culvert> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "from its upper to its lower end"}, self.path);
  visit(Field{"diameter", "diameter", "inside", Quantity::small_length, 0.05, 5}, self.diameter_m);
  visit(Field{"start-depth", "invert at start", "below the ground there", Quantity::length, 0, 15}, self.start_depth_m);
  visit(Field{"end-depth", "invert at end", "below the ground there", Quantity::length, 0, 15}, self.end_depth_m);
  visit(Field{"roughness", "roughness n", "of Manning, 0.024 for corrugated metal", Quantity::ratio, 0.005, 0.2},
        self.roughness_n);
  visit(Field{"inlet", "inlet", "its upper end, by which it takes water in"}, self.inlet);
  visit(Field{"tailwater", "tailwater", "that always stands over the invert of its lower end; 0 lets it fall free",
              Quantity::length, 0, 10},
        self.tailwater_m);
}

}  // namespace yardwright
