// A page of paper with drawings on it. The device units of its placements are paper millimetres, from the top left
// corner, so that a page is the same on PDF, SVG and PNG.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/sheet/drawing.hpp"
#include "geom/sheet/palette.hpp"

namespace yardwright {

struct SheetBox {
  SheetPoint low, high;
  double width_mm() const { return high.x - low.x; }
  double height_mm() const { return high.y - low.y; }
  bool operator==(const SheetBox&) const = default;
};

struct PlacedDrawing {
  Drawing drawing;
  Placement placement;             ///< onto paper millimetres
  std::optional<SheetBox> window;  ///< what lies outside is cut off
};

struct Page {
  std::string name;  ///< "Plan"
  double width_mm = 0;
  double height_mm = 0;
  Colour paper = palette::white;
  std::vector<PlacedDrawing> drawings;
};

/// Where a drawing in paper millimetres lands: where it is.
inline Placement in_millimetres() { return {0, 0, 1, 1}; }

/// The paper point of a drawing's point.
inline SheetPoint on_paper(const Placement& placement, bool y_up, DrawPoint point) {
  return {placement.origin_x + point.x * placement.per_unit,
          placement.origin_y + (y_up ? -point.y : point.y) * placement.per_unit};
}

}  // namespace yardwright
