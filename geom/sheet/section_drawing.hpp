// A section of the ground as a drawing: existing ground dashed, design ground solid, what is filled darker, a storm's water
// filled up to its level, the highest groundwater dotted, and what the line crosses, each named once above it. Metres along the line to the right, levels
// up, drawn as many times as large as is said. Tall things are cut off at the top. Page: docs/methods/sheet.md
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/drain/storm/pipe_water.hpp"
#include "geom/drain/storm/section_water.hpp"
#include "geom/ground/line_crossings.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

struct SectionView {
  GroundSection ground;
  std::vector<LineCrossing> crossings;
  std::vector<std::string> names;     ///< of the crossings, in their order
  drain::storm::WaterLevels water;    ///< at the ground's points, or none
  drain::storm::WaterLevels deepest;  ///< drawn as a line
  std::vector<drain::storm::PitWater> pits;
  std::vector<drain::storm::PipeWater> pipes;
  double groundwater_depth_m = 0;  ///< below the existing ground; 0 is not known
};

/// The names of the crossings are the items' titles.
SectionView section_view(const Site& site, const DesignSurface& surface, const SitePath& path, ItemId along = {});

struct SectionPaper {
  double width_mm = 240;
  double height_mm = 80;
  UnitSystem units = UnitSystem::us;
  std::optional<double> metres_per_mm;  ///< along the line; what fills the width where not given
  bool tells_pits = false;              ///< levels of their rims and floors in numbers
};

struct SectionDrawing {
  Drawing drawing;
  Placement placement;  ///< onto millimetres from the top left corner of the paper
  double metres_per_mm = 1;
  double exaggeration = 1;  ///< of the levels
  int unnamed = 0;          ///< crossings for whose names there was no room
};

/// An empty drawing where nothing of the line lies on known ground.
SectionDrawing section_drawing(const SectionView& view, const SectionPaper& paper);

/// Groundwater deeper than this under the ground is not drawn.
inline constexpr double deepest_groundwater_m = 5;
extern const Stroke groundwater_stroke;
/// Whether a section of that yard shows it.
bool shows_groundwater(const SectionView& view);

/// The least 1, 2 or 5 times a power of ten that is no shorter.
double round_step(double least);

/// "true to scale", "levels drawn 5 times as large".
std::string exaggeration_words(double exaggeration);

}  // namespace yardwright
