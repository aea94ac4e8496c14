// Pages with a plan: the plan at its scale in the big window, the column beside it or its panels below it. The general plan shows the yard
// and what fails; each question has a plan of its own with what it computed and its findings numbered at their places.
#pragma once

#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/section_lines.hpp"
#include "geom/sheet/sheet_frame.hpp"

namespace yardwright {

struct PlanPageLayout {
  SheetBox frame, plan;
  std::vector<SheetBox> panels;  ///< of the column's words, in the order they are read
};
/// The column stands beside the plan or lies below it, whichever leaves the ground the larger standard scale; beside
/// it on a wide page where both do alike.
PlanPageLayout plan_page_layout(double width_mm, double height_mm, const Box& ground, UnitSystem units);

/// Where a plan lands so that `ground` is in the middle of `window`.
Placement placed_in(const Box& ground, const SheetBox& window, double scale_ratio);

/// What every page of a set is made from.
struct PlanSet {
  const Site& site;
  const Answers& answers;
  const Catalogs& catalogs;
  Findings findings;  ///< of every question, numbered as they stand
  SheetOptions options;
  PlanPageLayout layout;
  const TextMeasure& measure;
  std::vector<int> question_sheets;  ///< by question; 0 for none
  std::string findings_sheets;       ///< "sheets 8 to 9"
  std::vector<SectionLine> sections = {};
  std::string section_sheets = {};  ///< "sheet 6"
};

/// Whether a question has something to draw on a plan of its own.
bool has_plan(Question question, const Site& site, const Answers& answers);

Page general_plan(const PlanSet& set, double scale_ratio, const SheetTitle& title);
/// At the largest standard scale at which what the question is about fits; the title takes it.
Page question_plan(const PlanSet& set, Question question, SheetTitle title);

/// The deepest water of the storm that the options carry, and what it told of pits and walls.
Page storm_plan(const PlanSet& set, SheetTitle title);

/// The largest standard scale at which a ground fits into the window of a plan.
double plan_scale(const Box& ground, const SheetBox& window, UnitSystem units);

}  // namespace yardwright
