// The plan of a yard as a Drawing in site metres: lot, ground and every item, drawn quietly enough that the answers
// of a question can be laid over it. The same drawing serves the window and the sheets.
#pragma once

#include <limits>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/site/catalog/grain.hpp"

namespace yardwright {

/// The pixels of a Picture item, read by whoever knows the site's folder.
struct PicturePixels {
  ItemId item;
  Pixels pixels;
};

struct PlanStyle {
  UnitSystem units = UnitSystem::us;
  double metres_per_mm = 0.5;  ///< of the paper or screen it lands on: decides which words fit and how marks are spaced
  bool contours = true;
  bool hillshade = true;
  bool labels = true;
  bool dimensions = true;
  int built_phase = std::numeric_limits<int>::max();  ///< items of later phases are drawn faded
  std::vector<Grain> grains;                          ///< with them, a bin's label says what it holds
  std::vector<PicturePixels> pictures;                ///< pictures without pixels are drawn as an empty frame
};

Drawing plan_drawing(const Site& site, const DesignSurface& surface, const PlanStyle& style = {});

/// The contours alone, for whoever keeps them between frames and draws the plan with `contours` off.
Drawing contour_drawing(const DesignSurface& surface, const PlanStyle& style = {});

/// What a plan of this site covers: the lot and every item. A picture may reach beyond it, where it is cut off.
Box extent_of(const Site& site);

}  // namespace yardwright
