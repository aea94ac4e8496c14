// The plan of a yard as a Drawing in site metres: lot, ground and every item, drawn quietly enough that the answers
// of a question can be laid over it. The same drawing serves the window and the sheets.
#pragma once

#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include "geom/ground/contours.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/site/catalog/grain.hpp"

namespace yardwright {

/// The pixels of a Picture item, read by whoever knows the site's folder.
struct PicturePixels {
  ItemId item;
  Pixels pixels;
};

/// What of a ground is drawn the same at every scale, for whoever draws its plan again and again.
struct GroundShape {
  std::optional<PictureMark> shade;
  std::vector<Contour> contours;
};
GroundShape ground_shape(const DesignSurface& surface, UnitSystem units);

struct PlanStyle {
  UnitSystem units = UnitSystem::us;
  double metres_per_mm = 0.5;  ///< of the paper or screen it lands on: decides which words fit and how marks are spaced
  bool contours = true;
  bool hillshade = true;
  bool labels = true;
  bool dimensions = true;
  int built_phase = std::numeric_limits<int>::max();  ///< items of later phases are drawn faded
  std::shared_ptr<const GroundShape> ground;          ///< that of the surface and units, where it is kept; else made
  std::vector<Grain> grains;                          ///< with them, a bin's label says what it holds
  std::vector<PicturePixels> pictures;                ///< pictures without pixels are drawn as an empty frame
};

Drawing plan_drawing(const Site& site, const DesignSurface& surface, const PlanStyle& style = {});

/// What a plan of this site covers: the lot and every item. A picture may reach beyond it, where it is cut off.
Box extent_of(const Site& site);

}  // namespace yardwright
