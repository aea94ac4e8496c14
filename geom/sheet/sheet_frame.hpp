// The frame of a sheet and its title block: who, where, what scale, which sheet of how many.
#pragma once

#include "geom/sheet/sheet_pen.hpp"
#include "geom/site/site.hpp"

namespace yardwright {

inline constexpr double sheet_margin_mm = 8;
inline constexpr double title_block_mm = 54;  ///< at the foot of the column beside a plan
inline constexpr double title_strip_mm = 12;  ///< at the foot of a sheet of tables

struct SheetTitle {
  std::string yard;
  TitleBlock block;
  std::string sheet;  ///< "General plan", "Schedules"
  std::string scale;  ///< empty where nothing is to scale
  std::string phase;  ///< up to which the yard is drawn
  int number = 1, count = 1;
};

/// Everything inside the margins of a page.
SheetBox sheet_frame_box(double width_mm, double height_mm);
void draw_frame(SheetPen& pen, const SheetBox& frame);
/// Title block of labelled cells within `box`, from its top.
void draw_title_block(SheetPen& pen, const SheetBox& box, const SheetTitle& title);
/// The same facts on one strip along the foot of the frame.
void draw_title_strip(SheetPen& pen, const SheetBox& frame, const SheetTitle& title);

/// A circle with a needle to the north.
void draw_north_arrow(SheetPen& pen, SheetPoint centre, double radius_mm);
/// Bars of a round length, true to the scale; nothing is wider than `most_mm`.
void draw_scale_bar(SheetPen& pen, SheetPoint left, double most_mm, double metres_per_mm, UnitSystem units);

}  // namespace yardwright
