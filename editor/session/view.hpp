// How the plan lies on the screen: a scale and a centre, north up. Screen pixels from the window's top left.
#pragma once

#include "geom/shape/polygon.hpp"
#include "geom/site/site.hpp"

namespace yardwright::session {

struct View {
  SitePoint centre;
  double px_per_m = 4;
  ScreenPoint top_left;  ///< of the canvas in the window
  double width_px = 1000, height_px = 600;
  bool operator==(const View&) const = default;

  ScreenPoint middle() const { return {top_left.x + width_px / 2, top_left.y + height_px / 2}; }
};

ScreenPoint to_screen(const View& view, SitePoint point);
SitePoint to_site(const View& view, ScreenPoint point);

/// The plan is dragged along with the pointer.
View panned(View view, ScreenVector by);
/// Scaled so that the place under the pointer stays under it; between 0.05 and 400 px a metre.
View zoomed(View view, ScreenPoint pointer, double factor);
/// A box fills the canvas but for a margin of a twelfth on every side.
View fitted(View view, const Box& box);

/// Everything drawn and the lot; a hundred metres square where there is nothing.
Box bounds_of(const Site& site);
/// The place of the named items, roomy enough to see what is around them.
Box bounds_of(const Site& site, const std::vector<ItemId>& items);

}  // namespace yardwright::session
