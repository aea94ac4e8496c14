// Where the parts of a section drawing lie on its paper: the field of the ground, names above it, numbers beside and below.
#pragma once

#include "geom/sheet/section_drawing.hpp"

namespace yardwright {

/// A name like a flag at the line that goes down to what it names.
struct SectionName {
  std::string text;
  double names_m = 0;                             ///< chainage of what it names
  int things = 1;                                 ///< of which the text has the names
  double left_mm = 0, right_mm = 0, pole_mm = 0;  ///< from the left of the field
  int row = 0;                                    ///< counts upward from the field
};

struct SectionFrame {
  double metres_per_mm = 1;
  double exaggeration = 1;
  double low_m = 0, high_m = 0;  ///< levels of the field's bottom and top
  double from_m = 0, to_m = 0;   ///< chainage of its sides, a little beyond the line where it is centred
  std::vector<SectionName> names;
  int unnamed = 0;
  Placement placement;

  DrawPoint at(double chainage_m, double level_m) const { return {chainage_m, level_m * exaggeration}; }
};

inline constexpr double section_letters_mm = 2.4;
inline constexpr double section_row_mm = 3.6;

/// Nothing where no point of the section has a level.
std::optional<SectionFrame> section_frame(const SectionView& view, const SectionPaper& paper);

}  // namespace yardwright
