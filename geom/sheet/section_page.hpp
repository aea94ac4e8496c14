// A section of the ground as a page of its own, cut to the section: at a standard scale along the line, with the scale of
// the levels and a key in words. Page: docs/methods/sheet.md
#pragma once

#include "geom/sheet/page.hpp"
#include "geom/sheet/section_drawing.hpp"
#include "geom/sheet/sheet_pen.hpp"

namespace yardwright {

struct SectionTitle {
  std::string yard;
  std::string line;   ///< "along Drive 3"
  std::string water;  ///< what the water is, where there is some
};

/// "1 in = 40 ft along the line, levels drawn 5 times as large, levels and distances in ft".
std::string section_scale_words(const SectionDrawing& section, UnitSystem units);

/// Samples of the lines and fills that a section has, in a row; `water` is what its water is, where there is some.
void add_section_key(SheetPen& pen, SheetPoint at, const SectionView& view, const std::string& water);

Page section_page(const SectionView& view, const SectionTitle& title, UnitSystem units);

}  // namespace yardwright
