#include "geom/sheet/plan_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/sheet/drain_tables.hpp"
#include "geom/sheet/finding_tables.hpp"
#include "geom/sheet/overlay.hpp"
#include "geom/sheet/plan_drawing.hpp"
#include "geom/sheet/plan_page.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/quantity_tables.hpp"
#include "geom/sheet/schedule_tables.hpp"
#include "geom/sheet/section_sheets.hpp"
#include "geom/sheet/sheet_scale.hpp"
#include "geom/sheet/storm_tables.hpp"

namespace yardwright {

namespace {

struct PaperSize {
  double long_mm, short_mm;
};

/// ANSI/ASME Y14.1 and ISO 216 sizes (from memory).
PaperSize size_of(Paper paper) {
  switch (paper) {
    case Paper::letter: return {279.4, 215.9};
    case Paper::tabloid: return {431.8, 279.4};
    case Paper::ansi_d: return {863.6, 558.8};
    case Paper::a4: return {297, 210};
    case Paper::a3: return {420, 297};
    case Paper::a1: break;
  }
  return {841, 594};
}

struct PageSize {
  double width_mm, height_mm;
};

PageSize page_size(const SheetOptions& options) {
  const PaperSize size = size_of(options.paper);
  if (options.orientation == Orientation::landscape) return {size.long_mm, size.short_mm};
  return {size.short_mm, size.long_mm};
}

Expected<double> chosen_scale(const Site& site, const SheetOptions& options, const SheetBox& window) {
  const Box ground = extent_of(site);
  const double fits = plan_scale(ground, window, site.units);
  const double wanted = options.scale_ratio.value_or(fits);
  const double wide_mm = (ground.high.x - ground.low.x) * 1000 / wanted,
               high_mm = (ground.high.y - ground.low.y) * 1000 / wanted;
  if (wide_mm > window.width_mm() || high_mm > window.height_mm()) {
    return refused(fmt::format("the yard does not fit at {} on {} paper", scale_words(wanted, site.units),
                               names_of(options.paper)[static_cast<std::size_t>(options.paper)]),
                   "scale", fmt::format("choose {} or a larger paper", scale_words(fits, site.units)));
  }
  return wanted;
}

SheetBox tables_box(const SheetBox& frame) {
  constexpr double pad_mm = 6;
  return {{frame.low.x + pad_mm, frame.low.y + pad_mm},
          {frame.high.x - pad_mm, frame.high.y - title_strip_mm - pad_mm / 2}};
}

void add_table_pages(std::vector<Page>& pages, const std::string& name, const std::vector<Table>& tables,
                     const SheetBox& frame, const TextMeasure& measure) {
  if (tables.empty()) return;
  for (Drawing& drawing : flow_tables(tables, tables_box(frame), measure)) {
    pages.push_back(Page{name, 0, 0, palette::white, {{std::move(drawing), in_millimetres(), {}}}});
  }
}

/// Frame and title strip once it is known how many sheets there are.
void finish_table_page(Page& page, const SheetBox& frame, SheetTitle title, const TextMeasure& measure) {
  SheetPen pen{measure};
  title.sheet = page.name;
  draw_title_strip(pen, frame, title);
  draw_frame(pen, frame);
  page.drawings.push_back({pen.take(), in_millimetres(), {}});
}

/// "today", or "today to the next bin".
std::string phase_words(const Site& site, int built_phase) {
  if (site.phases.empty()) return "";
  const auto last = std::min(static_cast<std::size_t>(std::max(0, built_phase)), site.phases.size() - 1);
  return last == 0 ? site.phases.front() : fmt::format("{} to {}", site.phases.front(), site.phases[last]);
}

std::string sheets_words(int first, int last) {
  return first == last ? fmt::format("sheet {}", first) : fmt::format("sheets {} to {}", first, last);
}

/// Sections and tables, unfinished: without frame and title, whose numbers are not known yet.
std::vector<Page> table_pages(PlanSet& set, int first_sheet) {
  const UnitSystem units = set.site.units;
  std::vector<Page> pages = section_sheets(set, tables_box(set.layout.frame));
  if (!pages.empty()) set.section_sheets = sheets_words(first_sheet, first_sheet + static_cast<int>(pages.size()) - 1);
  add_table_pages(pages, "Schedules", schedule_tables(set.site, set.answers.surface, set.catalogs), set.layout.frame,
                  set.measure);
  add_table_pages(pages, "Quantities and cost",
                  quantity_tables(set.site, set.answers.surface, set.catalogs, set.options.prices), set.layout.frame,
                  set.measure);
  if (set.answers.drain)
    add_table_pages(pages, "Drainage", drain_tables(set.site, set.answers.surface, *set.answers.drain, set.catalogs),
                    set.layout.frame, set.measure);
  if (set.options.storm)
    add_table_pages(pages, "The storm", storm_tables(set.site, *set.options.storm), set.layout.frame, set.measure);
  const int first = first_sheet + static_cast<int>(pages.size());
  add_table_pages(pages, "Findings", finding_tables(set.findings, units), set.layout.frame, set.measure);
  set.findings_sheets = sheets_words(first, first_sheet + static_cast<int>(pages.size()) - 1);
  add_table_pages(pages, "Cautions", {cautions_table()}, set.layout.frame, set.measure);
  return pages;
}

/// Gives every question with a plan its sheet, from 2 on; the number of the sheet after them.
int number_questions(PlanSet& set) {
  int next = 2;
  for (const Question question : every_question)
    set.question_sheets.push_back(has_plan(question, set.site, set.answers) ? next++ : 0);
  return next;
}

}  // namespace

bool has_plan(Question question, const Site& site, const Answers& answers) {
  const Findings& findings = findings_of(answers, question);
  const bool placed = std::ranges::any_of(
      findings, [](const Finding& finding) { return !finding.place.empty() && finding.verdict <= Verdict::caution; });
  switch (question) {
    case Question::reach: return placed || !answers.reach->spouts.empty();
    case Question::turn: return placed || !answers.turn->routes.empty();
    case Question::drain: return placed || answers.surface.known();
    case Question::clear: return placed || !answers.clear->near.empty();
    case Question::grow: return site.lot.corners.size() >= 3;
    case Question::pace: break;
  }
  return placed;
}

Expected<std::vector<Page>> plan_sheets(const Site& site, const Answers& answers, const Catalogs& catalogs,
                                        const SheetOptions& options) {
  const PageSize size = page_size(options);
  const TextMeasure measure;
  PlanSet set{site,     answers,
              catalogs, all_findings(answers),
              options,  plan_page_layout(size.width_mm, size.height_mm, extent_of(site), site.units),
              measure,  {},
              {}};
  set.sections = section_lines(site, answers.surface);
  if (options.storm) std::ranges::copy(options.storm->findings, std::back_inserter(set.findings));
  const Expected<double> scale = chosen_scale(site, options, set.layout.plan);
  if (!scale) return tl::unexpected{scale.error()};

  const int storm_sheet = number_questions(set), first_table = storm_sheet + (options.storm ? 1 : 0);
  std::vector<Page> tables = table_pages(set, first_table);
  SheetTitle title{site.name,
                   site.title,
                   "General plan",
                   scale_words(*scale, site.units),
                   phase_words(site, options.built_phase),
                   1,
                   first_table - 1 + static_cast<int>(tables.size())};
  std::vector<Page> pages{general_plan(set, *scale, title)};
  for (const Question question : every_question) {
    title.number = set.question_sheets[static_cast<std::size_t>(question)];
    title.sheet = title_of(question);
    if (title.number > 0) pages.push_back(question_plan(set, question, title));
  }
  if (options.storm) {
    title.number = storm_sheet;
    title.sheet = "The storm";
    pages.push_back(storm_plan(set, title));
  }
  for (Page& page : tables) {
    title.number = static_cast<int>(pages.size()) + 1;
    finish_table_page(page, set.layout.frame, title, measure);
    pages.push_back(std::move(page));
  }
  for (Page& page : pages) {
    page.width_mm = size.width_mm;
    page.height_mm = size.height_mm;
  }
  return pages;
}

Page plan_picture(const Site& site, const Answers& answers, const Catalogs& catalogs,
                  std::vector<PicturePixels> pictures) {
  constexpr double wanted_mm = 360, room_mm = 10;
  const Box ground = extent_of(site);
  const double longest_m = std::max({ground.high.x - ground.low.x, ground.high.y - ground.low.y, 1.0});
  const double ratio = longest_m * 1000 / wanted_mm;
  const double width_mm = (ground.high.x - ground.low.x) * 1000 / ratio + 2 * room_mm;
  const double height_mm = (ground.high.y - ground.low.y) * 1000 / ratio + 2 * room_mm;
  PlanStyle style;
  style.units = site.units;
  style.metres_per_mm = ratio / 1000;
  style.grains = catalogs.grains;
  style.pictures = std::move(pictures);
  PlanParts parts = plan_parts(site, answers.surface, style);
  add(parts, finding_parts(all_findings(answers), {.units = site.units, .metres_per_mm = style.metres_per_mm}));
  Page page{"Plan", width_mm, height_mm, palette::paper, {}};
  page.drawings.push_back({with_labels(std::move(parts), {style.metres_per_mm, {}}),
                           placed_in(ground, {{0, 0}, {width_mm, height_mm}}, ratio),
                           {}});
  return page;
}

}  // namespace yardwright
