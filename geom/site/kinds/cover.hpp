// An area of ground with one cover and soil group, for runoff. Where areas overlap, the later one counts.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class SoilGroup : std::uint8_t { a, b, c, d };
constexpr std::array<std::string_view, 4> names_of(SoilGroup) { return {"a", "b", "c", "d"}; }

struct Cover {
  static constexpr std::string_view key = "cover";
  static constexpr std::string_view label = "ground cover";

  SitePath outline;
  std::string cover = "gravel";
  SoilGroup soil = SoilGroup::c;

  bool operator==(const Cover&) const = default;
};

template <MaybeConst<Cover> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(ring_field("outline", "outline", "its corners"), self.outline);
  visit(Field{"cover", "cover", "name of the cover in the cover catalogue"}, self.cover);
  visit(Field{"soil", "soil group", "hydrologic soil group of the NRCS"}, self.soil);
}

}  // namespace yardwright
