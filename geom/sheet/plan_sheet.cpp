#include "geom/sheet/plan_sheet.hpp"

#include <fmt/format.h>

#include "geom/sheet/finding_tables.hpp"
#include "geom/sheet/overlay.hpp"
#include "geom/sheet/plan_drawing.hpp"
#include "geom/sheet/plan_page.hpp"
#include "geom/sheet/schedule_tables.hpp"
#include "geom/sheet/sheet_scale.hpp"

namespace yardwright {

namespace {

constexpr double plan_room_mm = 10;  ///< kept free around the yard for words at its edges

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
  const double fits = scale_ratio_that_fits(ground.high.x - ground.low.x, ground.high.y - ground.low.y,
                                            window.width_mm() - 2 * plan_room_mm, window.height_mm() - 2 * plan_room_mm, site.units);
  const double wanted = options.scale_ratio.value_or(fits);
  const double wide_mm = (ground.high.x - ground.low.x) * 1000 / wanted, high_mm = (ground.high.y - ground.low.y) * 1000 / wanted;
  if (wide_mm > window.width_mm() || high_mm > window.height_mm()) {
    return refused(fmt::format("the yard does not fit at {} on {} paper", scale_words(wanted, site.units),
                               names_of(options.paper)[static_cast<std::size_t>(options.paper)]),
                   "scale", fmt::format("choose {} or a larger paper", scale_words(fits, site.units)));
  }
  return wanted;
}

SheetBox tables_box(const SheetBox& frame) {
  constexpr double pad_mm = 6;
  return {{frame.low.x + pad_mm, frame.low.y + pad_mm}, {frame.high.x - pad_mm, frame.high.y - title_strip_mm - pad_mm / 2}};
}

void add_table_pages(std::vector<Page>& pages, const std::string& name, const std::vector<Table>& tables, const SheetBox& frame,
                     const TextMeasure& measure) {
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

}  // namespace

Expected<std::vector<Page>> plan_sheets(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                        const Findings& findings, const SheetOptions& options) {
  const PageSize size = page_size(options);
  const PlanPageLayout layout = plan_page_layout(size.width_mm, size.height_mm);
  const Expected<double> scale = chosen_scale(site, options, layout.plan);
  if (!scale) return tl::unexpected{scale.error()};

  const TextMeasure measure;
  std::vector<Page> tables;
  add_table_pages(tables, "Schedules", schedule_tables(site, surface, catalogs), layout.frame, measure);
  std::vector<Table> judged = finding_tables(findings, site.units);
  judged.push_back(cautions_table());
  add_table_pages(tables, "Findings", judged, layout.frame, measure);

  SheetTitle title{site.name, site.title, "Plan", scale_words(*scale, site.units), 1, static_cast<int>(tables.size()) + 1};
  std::vector<Page> pages{plan_page(site, surface, catalogs, findings, options, layout, *scale, title, measure)};
  for (Page& page : tables) {
    ++title.number;
    finish_table_page(page, layout.frame, title, measure);
    pages.push_back(std::move(page));
  }
  for (Page& page : pages) {
    page.width_mm = size.width_mm;
    page.height_mm = size.height_mm;
  }
  return pages;
}

Page plan_picture(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Findings& findings,
                  std::vector<PicturePixels> pictures) {
  constexpr double wanted_mm = 360;
  const Box ground = extent_of(site);
  const double longest_m = std::max({ground.high.x - ground.low.x, ground.high.y - ground.low.y, 1.0});
  const double ratio = longest_m * 1000 / wanted_mm;
  const double width_mm = (ground.high.x - ground.low.x) * 1000 / ratio + 2 * plan_room_mm;
  const double height_mm = (ground.high.y - ground.low.y) * 1000 / ratio + 2 * plan_room_mm;
  PlanStyle style;
  style.units = site.units;
  style.metres_per_mm = ratio / 1000;
  style.grains = catalogs.grains;
  style.pictures = std::move(pictures);
  const Placement placement = placed_in(ground, {{0, 0}, {width_mm, height_mm}}, ratio);
  Page page{"Plan", width_mm, height_mm, palette::paper, {}};
  page.drawings.push_back({plan_drawing(site, surface, style), placement, {}});
  page.drawings.push_back({finding_overlay(findings, {site.units, style.metres_per_mm}), placement, {}});
  return page;
}

}  // namespace yardwright
