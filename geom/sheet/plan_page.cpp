#include "geom/sheet/plan_page.hpp"

#include <algorithm>

#include "geom/sheet/overlay.hpp"
#include "geom/sheet/plan_drawing.hpp"

namespace yardwright {

namespace {

constexpr double column_pad_mm = 3;
constexpr double title_block_mm = 48;
constexpr double north_and_scale_mm = 24;
constexpr double heading_mm = 2.0;

/// The column beside the plan, filled from its top.
class Column {
 public:
  Column(SheetPen& pen, const SheetBox& box)
      : pen_{pen}, left_{box.low.x + column_pad_mm}, width_{box.width_mm() - 2 * column_pad_mm}, y_{box.low.y + 4}, box_{box} {}

  void name(const std::string& yard, const std::string& place) {
    y_ = pen_.paragraph({left_, y_}, yard, width_, {4.6, palette::ink, true, Anchor::left});
    if (!place.empty()) y_ = pen_.paragraph({left_, y_}, place, width_, {2.3, palette::quiet_ink, false, Anchor::left});
    y_ += 3;
  }

  void heading(const std::string& text) {
    pen_.words({left_, y_}, text, {heading_mm, palette::quiet_ink, true, Anchor::left});
    pen_.line({left_, y_ + 2}, {left_ + width_, y_ + 2}, {palette::rule_line, 0.2, {}});
    y_ += 5;
  }

  void questions(const Findings& findings);
  void legend(const Site& site);
  void foot(const SheetTitle& title, double metres_per_mm, UnitSystem units);

 private:
  double room_mm() const { return box_.high.y - title_block_mm - north_and_scale_mm - y_; }

  SheetPen& pen_;
  double left_, width_, y_;
  SheetBox box_;
};

Findings of_question(const Findings& findings, Question question) {
  Findings mine;
  std::ranges::copy_if(findings, std::back_inserter(mine), [&](const Finding& finding) { return finding.question == question; });
  return mine;
}

std::string in_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::fail: return "to mend";
    case Verdict::caution: return "to look at";
    case Verdict::pass: return "passes";
    case Verdict::not_checked: break;
  }
  return "not checked";
}

/// Two columns of six questions, each with its worst verdict.
void Column::questions(const Findings& findings) {
  heading("the six questions");
  constexpr double row_mm = 4.6;
  int at = 0;
  for (const Question question : every_question) {
    const Verdict verdict = worst(of_question(findings, question));
    const double y = y_ + at++ * row_mm;
    pen_.symbol({left_ + 1.6, y}, symbol_of(verdict));
    pen_.words({left_ + 5, y}, std::string{names_of(question)[static_cast<std::size_t>(question)]}, {2.2, palette::ink, true, Anchor::left});
    pen_.fitted({left_ + width_, y}, in_words(verdict), width_ - 20, {2.1, palette::of(verdict), false, Anchor::right});
  }
  y_ += at * row_mm + 2;
}

/// The kinds on this plan, in two columns, with their icons as large as the room allows.
void Column::legend(const Site& site) {
  std::vector<Thing> present;
  for (Thing& kind : every_kind()) {
    const auto same = [&](const Item& item) { return item.thing.index() == kind.index(); };
    if (std::ranges::any_of(site.items, same)) present.push_back(std::move(kind));
  }
  if (present.empty()) return;
  heading("legend");
  const std::size_t rows = (present.size() + 1) / 2;
  const double row_mm = std::clamp((room_mm() - 2) / static_cast<double>(rows), 2.6, 7.5);
  const double factor = std::min(0.85, row_mm / (2.2 * kind_symbol_half_mm));
  const double text_mm = std::clamp(row_mm * 0.42, 1.6, 2.2);
  for (std::size_t i = 0; i < present.size(); ++i) {
    const double x = left_ + (i < rows ? 0 : width_ / 2);
    const double y = y_ + (static_cast<double>(i % rows) + 0.35) * row_mm;
    const double icon_mm = kind_symbol_half_mm * factor;
    pen_.symbol({x + icon_mm, y}, scaled(symbol_of_kind(kind_key(present[i])), factor));
    pen_.fitted({x + 2 * icon_mm + 1.2, y}, std::string{kind_label(present[i])}, width_ / 2 - 2 * icon_mm - 2, {text_mm});
  }
  y_ += static_cast<double>(rows) * row_mm;
}

void Column::foot(const SheetTitle& title, double metres_per_mm, UnitSystem units) {
  const double top = box_.high.y - title_block_mm;
  draw_title_block(pen_, {{box_.low.x, top}, box_.high}, title);
  draw_north_arrow(pen_, {box_.high.x - 10, top - 9}, 4.2);
  draw_scale_bar(pen_, {left_ + 2, top - 10}, width_ - 26, metres_per_mm, units);
  pen_.words({left_ + 1, top - 15}, title.scale, {2.4, palette::ink, true, Anchor::left});
}

/// What keeps the plan honest where it is read alone.
void draw_plan_note(SheetPen& pen, const SheetBox& plan) {
  pen.fitted({plan.low.x + 3, plan.high.y - 3},
             "Planning aid. Local code, the utility and licensed practice decide. Numbers beside the signs are those of the findings' tables.",
             plan.width_mm() - 6, {1.8, palette::quiet_ink, false, Anchor::left});
}

}  // namespace

PlanPageLayout plan_page_layout(double width_mm, double height_mm) {
  const SheetBox frame = sheet_frame_box(width_mm, height_mm);
  const double column_mm = std::clamp(0.2 * width_mm, 58.0, 90.0);
  const double split = frame.high.x - column_mm;
  return {frame, {frame.low, {split, frame.high.y}}, {{split, frame.low.y}, frame.high}};
}

Placement placed_in(const Box& ground, const SheetBox& window, double scale_ratio) {
  const double mm_per_metre = 1000 / scale_ratio;
  const SitePoint middle = between(ground.low, ground.high, 0.5);
  const SheetPoint centre = between(window.low, window.high, 0.5);
  return {centre.x - middle.x * mm_per_metre, centre.y + middle.y * mm_per_metre, mm_per_metre, 1};
}

Page plan_page(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Findings& findings,
               const SheetOptions& options, const PlanPageLayout& layout, double scale_ratio, const SheetTitle& title, const TextMeasure& measure) {
  PlanStyle style;
  style.units = site.units;
  style.metres_per_mm = scale_ratio / 1000;
  style.grains = catalogs.grains;
  style.built_phase = options.built_phase;
  style.pictures = options.pictures;
  const Placement placement = placed_in(extent_of(site), layout.plan, scale_ratio);

  SheetPen ground{measure}, words{measure};
  ground.box(layout.plan, palette::paper, {palette::none, 0, {}});
  words.box(layout.column, palette::white, {palette::ink, 0.18, {}});
  Column column{words, layout.column};
  column.name(site.name, site.title.place);
  column.questions(findings);
  column.legend(site);
  column.foot(title, style.metres_per_mm, site.units);
  draw_plan_note(words, layout.plan);
  draw_frame(words, layout.frame);

  Page page{title.sheet};
  page.drawings.push_back({ground.take(), in_millimetres(), {}});
  page.drawings.push_back({plan_drawing(site, surface, style), placement, layout.plan});
  page.drawings.push_back({finding_overlay(findings, {site.units, style.metres_per_mm, OverlayWords::numbers}), placement, layout.plan});
  page.drawings.push_back({words.take(), in_millimetres(), {}});
  return page;
}

}  // namespace yardwright
