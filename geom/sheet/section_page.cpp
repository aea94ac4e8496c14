#include "geom/sheet/section_page.hpp"

#include "geom/sheet/sheet_pen.hpp"
#include "geom/sheet/sheet_scale.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr double line_mm = 360, field_mm = 85, side_mm = 18, margin_mm = 8, head_mm = 16, foot_mm = 13;

/// A sample of a line or of a fill with its word; gives the place of the next.
double add_key(SheetPen& pen, SheetPoint at, const std::string& word, Colour fill, const Stroke& stroke) {
  constexpr double sample_mm = 8;
  if (fill.alpha > 0)
    pen.box({{at.x, at.y - 1.3}, {at.x + sample_mm, at.y + 1.3}}, fill, stroke);
  else
    pen.line(at, {at.x + sample_mm, at.y}, stroke);
  pen.words({at.x + sample_mm + 1.5, at.y}, word, {2.4, palette::ink, false, Anchor::left});
  return at.x + sample_mm + 1.5 + pen.measure().width_mm(word, 2.4) + 6;
}

Drawing words_around(const SectionView& view, const SectionDrawing& section, const SectionTitle& title,
                     UnitSystem units, const Page& page) {
  const TextMeasure measure;
  SheetPen pen{measure};
  const double wide_mm = page.width_mm - 2 * margin_mm, key_mm = page.height_mm - foot_mm + 2;
  pen.fitted({margin_mm, margin_mm}, title.yard + ": section " + title.line, wide_mm,
             {4, palette::ink, true, Anchor::left});
  pen.fitted({margin_mm, margin_mm + 5.5}, section_scale_words(section, units), wide_mm,
             {2.6, palette::quiet_ink, false, Anchor::left});
  add_section_key(pen, {margin_mm, key_mm}, view, title.water);
  std::string caution = "A planning aid; not for construction. Levels are those of the ground's grid.";
  if (section.unnamed > 0)
    caution += " No room for the names of " + std::to_string(section.unnamed) + " more that it crosses.";
  pen.fitted({margin_mm, key_mm + 5}, caution, wide_mm, {2.2, palette::quiet_ink, false, Anchor::left});
  return pen.take();
}

}  // namespace

std::string section_scale_words(const SectionDrawing& section, UnitSystem units) {
  const std::string unit{shown_unit(Quantity::length, units).suffix};
  return scale_words(section.metres_per_mm * 1000, units) + " along the line, " +
         exaggeration_words(section.exaggeration) + ", levels and distances in " + unit;
}

void add_section_key(SheetPen& pen, SheetPoint at, const SectionView& view, const std::string& water) {
  at.x = add_key(pen, at, "existing ground", palette::none, {palette::earth, 0.3, {1.4, 1.0}});
  at.x = add_key(pen, at, "design ground", palette::none, {palette::ink, 0.5, {}});
  at.x = add_key(pen, at, "fill", palette::earth.faded(0.45), {palette::none, 0, {}});
  if (shows_groundwater(view)) at.x = add_key(pen, at, "highest groundwater", palette::none, groundwater_stroke);
  if (!water.empty()) add_key(pen, at, water, palette::water.faded(0.5), {palette::water, 0.35, {}});
}

Page section_page(const SectionView& view, const SectionTitle& title, UnitSystem units) {
  const double length_m = view.ground.length_m();
  const double ratio = scale_ratio_that_fits(length_m, 0, line_mm, field_mm, units);
  const double width_mm = std::max(140.0, length_m * 1000 / ratio + side_mm);
  const SectionDrawing section = section_drawing(view, {width_mm, field_mm, units, ratio / 1000, true});
  Page page{"Section", width_mm + 2 * margin_mm, head_mm + field_mm + foot_mm + 2, palette::paper, {}};
  Placement placement = section.placement;
  placement.origin_x += margin_mm;
  placement.origin_y += head_mm;
  page.drawings.push_back({section.drawing, placement, {}});
  page.drawings.push_back({words_around(view, section, title, units, page), in_millimetres(), {}});
  return page;
}

}  // namespace yardwright
