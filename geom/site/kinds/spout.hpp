// A gravity spout from a leg (its distributor) to what it fills. It is straight from outlet to inlet; its plan
// follows from what it joins.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class GrainState : std::uint8_t { dry, wet };
constexpr std::array<std::string_view, 2> names_of(GrainState) { return {"dry", "wet"}; }

struct Spout {
  static constexpr std::string_view key = "spout";
  static constexpr std::string_view label = "spout";

  ItemId from;
  ItemId to;
  GrainState state = GrainState::dry;
  double diameter_m = 0.2032;
  bool supported = false;

  bool operator==(const Spout&) const = default;
};

template <MaybeConst<Spout> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"from", "from", "the leg"}, self.from);
  visit(Field{"to", "to", "the bin, dryer or overhead bin that it fills"}, self.to);
  visit(Field{"state", "grain", "dry or wet grain; wet grain wants a steeper spout"}, self.state);
  visit(Field{"diameter", "diameter", "of the pipe", Quantity::small_length, 0.05, 1}, self.diameter_m);
  visit(Field{"supported", "supported", "a truss or a tower carries its span"}, self.supported);
}

}  // namespace yardwright
