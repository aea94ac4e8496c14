#include "geom/sheet/compare_page.hpp"

#include <algorithm>

#include "geom/sheet/overlay.hpp"
#include "geom/sheet/plan_page.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/sheet_frame.hpp"
#include "geom/sheet/sheet_scale.hpp"
#include "geom/sheet/sheet_table.hpp"

namespace yardwright {

namespace {

constexpr double page_width_mm = 431.8;  // tabloid, across
constexpr double about_mm = 78;          // of the first column
constexpr double heading_mm = 10, gap_mm = 4, foot_mm = 16, highest_plan_mm = 190, least_plan_mm = 40;
constexpr double no_end_mm = 100'000;

struct Layout {
  SheetBox frame;
  double column_mm = 0;  ///< of an option
  double plans_mm = 0;   ///< height of the plans
  double scale_ratio = 1;

  SheetBox plan(std::size_t i) const {
    const double left = frame.low.x + about_mm + static_cast<double>(i) * column_mm;
    return {{left + gap_mm / 2, frame.low.y + heading_mm},
            {left + column_mm - gap_mm / 2, frame.low.y + heading_mm + plans_mm}};
  }
};

double width_of(const Box& box) { return box.high.x - box.low.x; }
double height_of(const Box& box) { return box.high.y - box.low.y; }

/// The largest ground of all, so that every plan fits at one scale.
Layout layout_of(const grow::Comparison& comparison) {
  double wide_m = 1, high_m = 1;
  for (const grow::Option& option : comparison.options) {
    const Box ground = extent_of(option.site);
    wide_m = std::max(wide_m, width_of(ground));
    high_m = std::max(high_m, height_of(ground));
  }
  Layout layout{sheet_frame_box(page_width_mm, no_end_mm)};
  layout.frame.low.x += gap_mm;
  layout.frame.high.x -= gap_mm;
  layout.column_mm = (layout.frame.width_mm() - about_mm) / static_cast<double>(comparison.options.size());
  constexpr double room_mm = 2 * gap_mm;
  layout.scale_ratio =
      scale_ratio_that_fits(wide_m, high_m, layout.column_mm - gap_mm - room_mm, highest_plan_mm, comparison.units);
  layout.plans_mm = std::max(least_plan_mm, high_m * 1000 / layout.scale_ratio + room_mm);
  return layout;
}

PlacedDrawing placed_plan(const grow::Option& option, const Layout& layout, std::size_t i, const Catalogs& catalogs) {
  PlanStyle style;
  style.units = option.site.units;
  style.metres_per_mm = layout.scale_ratio / 1000;
  style.grains = catalogs.grains;
  PlanParts parts = plan_parts(option.site, option.answers.surface, style);
  PlanParts signs = finding_parts(all_findings(option.answers), {.units = style.units,
                                                                 .metres_per_mm = style.metres_per_mm,
                                                                 .words = OverlayWords::numbers,
                                                                 .least = Verdict::fail,
                                                                 .places = false});
  signs.labels.clear();  // their numbers are those of a list that is not on this page
  add(parts, std::move(signs));
  const SheetBox window = layout.plan(i);
  const Placement placement = placed_in(extent_of(option.site), window, layout.scale_ratio);
  const auto on_site = [&](double x_mm, double y_mm) {
    return SitePoint{(x_mm - placement.origin_x) / placement.per_unit,
                     (placement.origin_y - y_mm) / placement.per_unit};
  };
  const Box shown{on_site(window.low.x, window.high.y), on_site(window.high.x, window.low.y)};
  return {with_labels(std::move(parts), {style.metres_per_mm, shown}), placement, window};
}

Table empty_table(const Layout& layout, std::size_t options) {
  Table table{"", "", {{"", about_mm}}, {}};
  table.columns.insert(table.columns.end(), options, {"", layout.column_mm});
  return table;
}

Table rows_table(const grow::Comparison& comparison, const Layout& layout, const Catalogs& catalogs) {
  Table table = empty_table(layout, comparison.options.size());
  for (const grow::ComparedRow& row : grow::compared_rows(comparison, catalogs)) {
    std::vector<TableCell> cells{{row.about, true}};
    for (const grow::ComparedCell& cell : row.cells) {
      const Colour colour = cell.verdict ? palette::of(*cell.verdict) : palette::ink;
      const std::string words = cell.detail.empty() ? cell.words : cell.words + " · " + cell.detail;
      cells.push_back({words, cell.verdict.has_value(), colour, cell.verdict});
    }
    table.rows.push_back(std::move(cells));
  }
  return table;
}

/// A row for the n-th difference of every option.
Table differences_table(const grow::Comparison& comparison, const Layout& layout) {
  Table table = empty_table(layout, comparison.options.size());
  std::size_t most = 0;
  for (const grow::Option& option : comparison.options) most = std::max(most, option.differences.size());
  for (std::size_t i = 0; i < most; ++i) {
    std::vector<TableCell> cells{{i == 0 ? "what differs from " + comparison.options.front().name : "", true}};
    for (const grow::Option& option : comparison.options)
      cells.push_back({i < option.differences.size() ? option.differences[i].words : ""});
    table.rows.push_back(std::move(cells));
  }
  return table;
}

struct LowestPoint {
  double y = 0;
  void operator()(const LineMark& mark) {
    for (const DrawPoint point : mark.points) y = std::max(y, point.y);
  }
  void operator()(const TextMark& mark) { y = std::max(y, mark.at.y); }
  void operator()(const SymbolMark& mark) { y = std::max(y, mark.at.y); }
  template <class Other>
  void operator()(const Other&) {}
};

double lowest_y_mm(const Drawing& drawing) {
  LowestPoint lowest;
  for (const Mark& mark : drawing.marks) std::visit(lowest, mark);
  return lowest.y;
}

void draw_heads(SheetPen& pen, const grow::Comparison& comparison, const Layout& layout) {
  const SheetPoint at{layout.frame.low.x, layout.frame.low.y + heading_mm / 2};
  pen.fitted(at, "Options side by side", about_mm - gap_mm, {4.2, palette::ink, true, Anchor::left});
  for (std::size_t i = 0; i < comparison.options.size(); ++i) {
    const SheetBox plan = layout.plan(i);
    pen.fitted({plan.low.x, at.y}, comparison.options[i].name, plan.width_mm(),
               {3.4, palette::ink, true, Anchor::left});
    pen.box(plan, palette::none, {palette::ink, 0.2, {}});
  }
}

/// Beside the plans: whose yard, what scale, whose prices.
void draw_about(SheetPen& pen, const grow::Comparison& comparison, const Layout& layout) {
  const double left = layout.frame.low.x, wide = about_mm - 2 * gap_mm;
  const double mm = layout.scale_ratio / 1000;
  const TextStyle words{2.4, palette::ink, false, Anchor::left}, quiet{2.2, palette::quiet_ink, false, Anchor::left};
  double y = layout.frame.low.y + heading_mm + gap_mm / 2;
  y = pen.paragraph({left, y}, comparison.options.front().site.name, wide, {3, palette::ink, true, Anchor::left}) + 2;
  y = pen.paragraph({left, y}, scale_words(layout.scale_ratio, comparison.units) + ", every plan", wide, words) + 2;
  y = pen.paragraph({left, y}, "Prices: " + grow::book_words(comparison.book) + ".", wide, words) + 2;
  pen.paragraph({left, y},
                "Crosses are what fails. A planning aid: local code, the utility and licensed practice decide.", wide,
                quiet);
  const double foot = layout.frame.low.y + heading_mm + layout.plans_mm - 8;
  draw_scale_bar(pen, {left, foot}, 0.6 * wide, mm, comparison.units);
  draw_north_arrow(pen, {left + wide - 4, foot - 2}, 5);
}

}  // namespace

Page compare_page(const grow::Comparison& comparison, const Catalogs& catalogs) {
  const TextMeasure measure;
  const Layout layout = layout_of(comparison);
  SheetPen ground{measure}, words{measure};
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    ground.box(layout.plan(i), palette::paper, {palette::none, 0, {}});
  draw_heads(words, comparison, layout);
  draw_about(words, comparison, layout);

  Page page{"Options", page_width_mm, 0, palette::white, {}};
  page.drawings.push_back({ground.take(), in_millimetres(), {}});
  for (std::size_t i = 0; i < comparison.options.size(); ++i)
    page.drawings.push_back(placed_plan(comparison.options[i], layout, i, catalogs));
  page.drawings.push_back({words.take(), in_millimetres(), {}});

  const SheetBox below{{layout.frame.low.x, layout.plan(0).high.y + gap_mm}, layout.frame.high};
  std::vector<Table> tables{rows_table(comparison, layout, catalogs), differences_table(comparison, layout)};
  std::erase_if(tables, [](const Table& table) { return table.rows.empty(); });
  double foot = below.low.y;
  for (Drawing& drawing : flow_tables(tables, below, measure)) {
    foot = std::max(foot, lowest_y_mm(drawing));
    page.drawings.push_back({std::move(drawing), in_millimetres(), {}});
  }
  page.height_mm = foot + foot_mm;
  return page;
}

}  // namespace yardwright
