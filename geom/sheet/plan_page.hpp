// Page 1 of a plan set: the plan at its scale in the big window, and beside it the legend, what the questions say,
// the north arrow, the scale bar and the title block.
#pragma once

#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_frame.hpp"

namespace yardwright {

struct PlanPageLayout {
  SheetBox frame, plan, column;
};
PlanPageLayout plan_page_layout(double width_mm, double height_mm);

/// Where a plan lands so that `ground` is in the middle of `window`.
Placement placed_in(const Box& ground, const SheetBox& window, double scale_ratio);

Page plan_page(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Findings& findings,
               const SheetOptions& options, const PlanPageLayout& layout, double scale_ratio, const SheetTitle& title, const TextMeasure& measure);

}  // namespace yardwright
