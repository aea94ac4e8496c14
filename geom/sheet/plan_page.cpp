#include "geom/sheet/plan_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/ground/contours.hpp"
#include "geom/sheet/answer_parts.hpp"
#include "geom/sheet/finding_tables.hpp"
#include "geom/sheet/grow_drawing.hpp"
#include "geom/sheet/overlay.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/question_view.hpp"
#include "geom/sheet/sheet_column.hpp"
#include "geom/sheet/sheet_scale.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/sheet/storm_drawing.hpp"
#include "geom/sheet/storm_tables.hpp"

namespace yardwright {

namespace {

constexpr double plan_room_mm = 10;  ///< kept free around the yard for words at its edges

/// What keeps the plan honest where it is read alone.
void draw_plan_note(SheetPen& pen, const SheetBox& plan) {
  const std::string note =
      "Planning aid. Local code, the utility and licensed practice decide. Numbers beside the signs are those of the "
      "findings' tables.";
  const TextStyle style{1.8, palette::quiet_ink, false, Anchor::left};
  const double wide = std::min(plan.width_mm() - 6, pen.measure().width_mm(note, style.height_mm, style.bold));
  const SheetPoint at{plan.low.x + 3, plan.high.y - 3};
  pen.box({{at.x - 1, at.y - 1.6}, {at.x + wide + 1, at.y + 1.6}}, palette::paper, {palette::none, 0, {}});
  pen.fitted(at, note, wide, style);
}

/// The part of the site that shows in the window, less a hand's breadth and the note at its foot.
Box shown_ground(const Placement& placement, const SheetBox& window) {
  constexpr double edge_mm = 1.5, note_mm = 6;
  const auto on_site = [&](double x_mm, double y_mm) {
    return SitePoint{(x_mm - placement.origin_x) / placement.per_unit,
                     (placement.origin_y - y_mm) / placement.per_unit};
  };
  return {on_site(window.low.x + edge_mm, window.high.y - note_mm),
          on_site(window.high.x - edge_mm, window.low.y + edge_mm)};
}

PlanStyle style_of(const PlanSet& set, double scale_ratio) {
  PlanStyle style;
  style.units = set.site.units;
  style.metres_per_mm = scale_ratio / 1000;
  style.grains = set.catalogs.grains;
  style.built_phase = set.options.built_phase;
  return style;
}

/// Plan and column on one page.
Page composed(const PlanSet& set, PlanParts parts, const Placement& placement, double metres_per_mm, SheetPen& words,
              const std::string& name) {
  SheetPen ground{set.measure};
  ground.box(set.layout.plan, palette::paper, {palette::none, 0, {}});
  draw_plan_note(words, set.layout.plan);
  draw_frame(words, set.layout.frame);
  Page page{name};
  page.drawings.push_back({ground.take(), in_millimetres(), {}});
  page.drawings.push_back({with_labels(std::move(parts), {metres_per_mm, shown_ground(placement, set.layout.plan)}),
                           placement, set.layout.plan});
  page.drawings.push_back({words.take(), in_millimetres(), {}});
  return page;
}

std::string ground_words(const PlanSet& set) {
  const double interval_m = contour_interval_m(set.answers.surface, set.site.units);
  if (!(interval_m > 0))
    return set.answers.surface.known() ? "The ground is level."
                                       : "The ground is not known: it is taken as flat at level 0.";
  std::string words = fmt::format("Contours every {}, of the ground as it will lie.",
                                  short_text_of(interval_m, Quantity::length, set.site.units));
  if (!set.site.ground.source.empty()) words += " Levels: " + set.site.ground.source + ".";
  return words;
}

bool is_of_storm(const Finding& finding) { return finding.rule.starts_with("drain.storm"); }

/// The findings with those that are not wanted made silent, so that the others keep their numbers.
template <class Wanted>
Findings only(Findings findings, Wanted wanted) {
  for (Finding& finding : findings) {
    if (wanted(finding)) continue;
    finding.verdict = Verdict::pass;
    finding.place.clear();
  }
  return findings;
}

/// A question's lines are not read over a photograph.
Site without_pictures(Site site) {
  std::erase_if(site.items, [](const Item& item) { return as<Picture>(item) != nullptr; });
  return site;
}

std::vector<KeyRow> key_of_plan(const PlanSet& set, Question question, const PlanStyle& style) {
  std::vector<KeyRow> rows = key_of(question, set.site, set.answers, style);
  if (question == Question::drain && !set.sections.empty())
    rows.insert(rows.end() - 1,
                key_of_line(section_line_stroke, "section, seen to the side of the tip: " + set.section_sheets));
  return rows;
}

void panel_boxes(SheetPen& pen, const std::vector<SheetBox>& panels) {
  for (const SheetBox& panel : panels) pen.box(panel, palette::white, {palette::ink, 0.18, {}});
}

double panel_width_mm(double page_width_mm) { return std::clamp(0.2 * page_width_mm, 58.0, 90.0); }

PlanPageLayout with_column_beside(const SheetBox& frame, double panel_mm) {
  const double split = frame.high.x - panel_mm;
  return {frame, {frame.low, {split, frame.high.y}}, {{{split, frame.low.y}, frame.high}}};
}

PlanPageLayout with_panels_below(const SheetBox& frame, double panel_mm) {
  const double split = frame.high.y - title_block_mm - north_and_scale_mm;
  constexpr int most_panels = 4;
  const int count = std::clamp(static_cast<int>(frame.width_mm() / panel_mm), 2, most_panels);
  const double wide = frame.width_mm() / count;
  PlanPageLayout layout{frame, {frame.low, {frame.high.x, split}}, {}};
  for (int i = 0; i < count; ++i)
    layout.panels.push_back({{frame.low.x + i * wide, split}, {frame.low.x + (i + 1) * wide, frame.high.y}});
  return layout;
}

}  // namespace

PlanPageLayout plan_page_layout(double width_mm, double height_mm, const Box& ground, UnitSystem units) {
  const SheetBox frame = sheet_frame_box(width_mm, height_mm);
  const PlanPageLayout beside = with_column_beside(frame, panel_width_mm(width_mm));
  const PlanPageLayout below = with_panels_below(frame, panel_width_mm(width_mm));
  const double beside_ratio = plan_scale(ground, beside.plan, units),
               below_ratio = plan_scale(ground, below.plan, units);
  if (beside_ratio == below_ratio) return width_mm >= height_mm ? beside : below;
  return beside_ratio < below_ratio ? beside : below;
}

Placement placed_in(const Box& ground, const SheetBox& window, double scale_ratio) {
  const double mm_per_metre = 1000 / scale_ratio;
  const SitePoint middle = between(ground.low, ground.high, 0.5);
  const SheetPoint centre = between(window.low, window.high, 0.5);
  return {centre.x - middle.x * mm_per_metre, centre.y + middle.y * mm_per_metre, mm_per_metre, 1};
}

double plan_scale(const Box& ground, const SheetBox& window, UnitSystem units) {
  return scale_ratio_that_fits(ground.high.x - ground.low.x, ground.high.y - ground.low.y,
                               window.width_mm() - 2 * plan_room_mm, window.height_mm() - 2 * plan_room_mm, units);
}

Page general_plan(const PlanSet& set, double scale_ratio, const SheetTitle& title) {
  PlanStyle style = style_of(set, scale_ratio);
  style.pictures = set.options.pictures;
  PlanParts parts = plan_parts(set.site, set.answers.surface, style);
  add(parts, finding_parts(set.findings, {.units = style.units,
                                          .metres_per_mm = style.metres_per_mm,
                                          .words = OverlayWords::numbers,
                                          .least = Verdict::fail,
                                          .places = false}));
  SheetPen words{set.measure};
  panel_boxes(words, set.layout.panels);
  SheetColumn column{words, set.layout.panels};
  column.title(set.site.name, set.site.title.place);
  column.questions(set.findings, set.question_sheets);
  column.paragraph(ground_words(set));
  column.legend(set.site);
  column.foot(title, style.metres_per_mm, set.site.units);
  return composed(set, std::move(parts), placed_in(extent_of(set.site), set.layout.plan, scale_ratio),
                  style.metres_per_mm, words, title.sheet);
}

Page storm_plan(const PlanSet& set, SheetTitle title) {
  const StormSheet& storm = *set.options.storm;
  const Box ground = extent_of(set.site);
  const double ratio = plan_scale(ground, set.layout.plan, set.site.units);
  title.scale = scale_words(ratio, set.site.units);
  PlanStyle style = style_of(set, ratio);
  style.hillshade = false;
  PlanParts parts = plan_parts(without_pictures(set.site), set.answers.surface, style);
  add(parts, {deepest_water_drawing(storm.story.deepest_m).marks, {}, {}});
  const Findings told = only(set.findings, [](const Finding& finding) { return is_of_storm(finding); });
  add(parts, finding_parts(told, {style.units, style.metres_per_mm, OverlayWords::numbers, Verdict::caution,
                                  Question::drain, true}));
  SheetPen words{set.measure};
  panel_boxes(words, set.layout.panels);
  SheetColumn column{words, set.layout.panels};
  column.title("The storm", "When does the rain reach the pits?");
  column.key(storm_key(set.site, storm));
  column.findings_of(Question::drain, told, set.site.units, set.findings_sheets);
  column.foot(title, style.metres_per_mm, set.site.units);
  return composed(set, std::move(parts), placed_in(ground, set.layout.plan, ratio), style.metres_per_mm, words,
                  title.sheet);
}

Page question_plan(const PlanSet& set, Question question, SheetTitle title) {
  const Box ground = ground_of(question, set.site, set.answers);
  const double ratio = plan_scale(ground, set.layout.plan, set.site.units);
  title.scale = scale_words(ratio, set.site.units);
  PlanStyle style = style_of(set, ratio);
  style.contours = false;  // drain draws its own
  style.hillshade = question == Question::drain;
  PlanParts parts = plan_parts(without_pictures(set.site), set.answers.surface, style);
  PlanParts cuts = question == Question::drain ? section_line_parts(set.sections, style.metres_per_mm) : PlanParts{};
  add(parts, answer_parts(question, set.answers, set.site, style, cuts.obstacles));
  add(parts, std::move(cuts));
  if (question == Question::grow) add(parts, grow_parts(set.site, set.answers, set.catalogs, style));
  const Findings told = only(set.findings, [](const Finding& finding) { return !is_of_storm(finding); });
  add(parts, finding_parts(told, {style.units, style.metres_per_mm, OverlayWords::numbers, Verdict::caution, question,
                                  question != Question::clear}));
  SheetPen words{set.measure};
  panel_boxes(words, set.layout.panels);
  SheetColumn column{words, set.layout.panels};
  column.title(title_of(question), std::string{asked_by(question)});
  column.key(key_of_plan(set, question, style));
  column.findings_of(question, told, set.site.units, set.findings_sheets);
  column.foot(title, style.metres_per_mm, set.site.units);
  return composed(set, std::move(parts), placed_in(ground, set.layout.plan, ratio), style.metres_per_mm, words,
                  title.sheet);
}

}  // namespace yardwright
