#include "geom/sheet/section_sheets.hpp"

#include <algorithm>

#include "geom/sheet/section_page.hpp"
#include "geom/sheet/sheet_scale.hpp"

namespace yardwright {

namespace {

constexpr double least_block_mm = 88, most_block_mm = 170, head_mm = 13, foot_mm = 7, between_mm = 5;
constexpr double numbers_mm = 18;  ///< beside the field

SectionView view_of(const PlanSet& set, const SectionLine& line) {
  SectionView view = section_view(set.site, set.answers.surface, line.path);
  if (!set.options.storm) return view;
  const auto& story = set.options.storm->story;
  const LevelGrid& ground = set.answers.surface.design;
  view.water = drain::storm::deepest_water(view.ground, ground, story);
  view.pits = drain::storm::highest_pit_water(story);
  view.pipes = drain::storm::highest_pipe_water(set.site, ground, story);
  return view;
}

void add_head(SheetPen& pen, const SheetBox& block, const SectionLine& line, const SectionDrawing& section,
              UnitSystem units) {
  pen.fitted({block.low.x, block.low.y + 2.5}, "Section " + line.letter + "  " + line.title, block.width_mm(),
             {3.6, palette::ink, true, Anchor::left});
  pen.fitted({block.low.x, block.low.y + 8}, section_scale_words(section, units), block.width_mm(),
             {2.3, palette::quiet_ink, false, Anchor::left});
}

/// One section and its words in a part of a page.
void add_block(Page& page, const PlanSet& set, const SectionLine& line, const SheetBox& block) {
  const UnitSystem units = set.site.units;
  const SectionView view = view_of(set, line);
  const double width_mm = block.width_mm(), field_mm = block.height_mm() - head_mm - foot_mm;
  const double ratio = scale_ratio_that_fits(view.ground.length_m(), 0, width_mm - numbers_mm, field_mm, units);
  const SectionDrawing section = section_drawing(view, {width_mm, field_mm, units, ratio / 1000, true});
  Placement placement = section.placement;
  placement.origin_x += block.low.x;
  placement.origin_y += block.low.y + head_mm;
  page.drawings.push_back({section.drawing, placement, {}});
  SheetPen pen{set.measure};
  add_head(pen, block, line, section, units);
  add_section_key(pen, {block.low.x, block.high.y - foot_mm + 3}, view,
                  set.options.storm ? "deepest water of the storm" : "");
  page.drawings.push_back({pen.take(), in_millimetres(), {}});
}

}  // namespace

std::vector<Page> section_sheets(const PlanSet& set, const SheetBox& box) {
  const auto fit = std::max(1, static_cast<int>((box.height_mm() + between_mm) / (least_block_mm + between_mm)));
  const std::size_t on_a_sheet = std::min(static_cast<std::size_t>(fit), std::max<std::size_t>(1, set.sections.size()));
  const double high_mm =
      std::min(most_block_mm, (box.height_mm() + between_mm) / static_cast<double>(on_a_sheet) - between_mm);
  std::vector<Page> pages;
  for (std::size_t i = 0; i < set.sections.size(); ++i) {
    if (i % on_a_sheet == 0) pages.push_back(Page{"Sections", 0, 0, palette::white, {}});
    const double top_mm = box.low.y + static_cast<double>(i % on_a_sheet) * (high_mm + between_mm);
    add_block(pages.back(), set, set.sections[i], {{box.low.x, top_mm}, {box.high.x, top_mm + high_mm}});
  }
  return pages;
}

}  // namespace yardwright
