// Which item a click or a box means. Solid things go before lines, lines before areas; among equals the smaller one.
#pragma once

#include <optional>
#include <utility>

#include "geom/site/site.hpp"

namespace yardwright::session {

/// The item under a point, no farther than `radius_m`; no id where there is none.
ItemId pick(const Site& site, SitePoint point, double radius_m);

/// A pad or a ground cover: drawn as an area, with much lying on it.
bool is_area(const Thing& thing);

/// Every item that lies wholly inside the box.
std::vector<ItemId> inside(const Site& site, const Box& box);

/// A spout's line on the plan, where both its ends stand.
std::optional<std::pair<SitePoint, SitePoint>> spout_line(const Site& site, const Spout& spout);

/// Points that span an item on the plan, spouts included; nothing for a spout whose ends are missing.
std::vector<SitePoint> outline_points(const Site& site, const Item& item);

}  // namespace yardwright::session
