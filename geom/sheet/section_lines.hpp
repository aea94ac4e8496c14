// Along which lines a plan set cuts the ground: every dimension that has a name, as one names a section; where there is
// none, through the deepest pit down the ground's fall; and along every culvert, a little beyond its ends.
#pragma once

#include <string>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/plan_parts.hpp"

namespace yardwright {

struct SectionLine {
  std::string letter;  ///< "A"
  std::string title;   ///< "through Dump, down the ground's fall"
  SitePath path;
  bool follows_item = false;  ///< but for its first and its last leg, which go beyond it
};

extern const Stroke section_line_stroke;

/// None where the ground is not known. Lines that lie wholly beyond it are left out.
std::vector<SectionLine> section_lines(const Site& site, const DesignSurface& surface);

/// The lines on a plan, their letters at both ends and a mark on the side to which one looks.
PlanParts section_line_parts(const std::vector<SectionLine>& lines, double metres_per_mm);

}  // namespace yardwright
