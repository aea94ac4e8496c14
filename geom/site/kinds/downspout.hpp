// Where the rain of a roof comes down: onto the ground at its place, or into the tile line under it.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Downspout {
  static constexpr std::string_view key = "downspout";
  static constexpr std::string_view label = "downspout";

  SitePoint at;
  ItemId of;
  double share_ratio = 1.0;

  bool operator==(const Downspout&) const = default;
};

template <MaybeConst<Downspout> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "of its foot, in the site frame"}, self.at);
  visit(Field{"of", "roof of", "the bin, dryer or building whose roof it drains"}, self.of);
  visit(Field{"share", "share of the roof", "whose rain it leads", Quantity::grade, 0, 1}, self.share_ratio);
}

}  // namespace yardwright
