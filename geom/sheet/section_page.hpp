// A section of the ground as a page of its own, cut to the section: at a standard scale along the line, with the scale of
// the levels and a key in words. Page: docs/methods/sheet.md
#pragma once

#include "geom/sheet/page.hpp"
#include "geom/sheet/section_drawing.hpp"

namespace yardwright {

struct SectionTitle {
  std::string yard;
  std::string line;   ///< "along Drive 3"
  std::string water;  ///< what the water is, where there is some
};

Page section_page(const SectionView& view, const SectionTitle& title, UnitSystem units);

}  // namespace yardwright
