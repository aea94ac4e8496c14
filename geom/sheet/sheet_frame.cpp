#include "geom/sheet/sheet_frame.hpp"

#include <fmt/format.h>

#include <cmath>

namespace yardwright {

namespace {

const Stroke frame_line{palette::ink, 0.5, {}};
const Stroke thin_line{palette::ink, 0.18, {}};
const TextStyle label_style{1.7, palette::quiet_ink, false, Anchor::left};
const TextStyle value_style{2.5, palette::ink, true, Anchor::left};

struct TitleCell {
  std::string label, value;
  double share = 1;
};

void draw_cells(SheetPen& pen, const SheetBox& row, const std::vector<TitleCell>& cells) {
  double shares = 0;
  for (const TitleCell& cell : cells) shares += cell.share;
  double x = row.low.x;
  for (const TitleCell& cell : cells) {
    const double wide = cell.share / shares * row.width_mm();
    if (x > row.low.x) pen.line({x, row.low.y}, {x, row.high.y}, thin_line);
    pen.words({x + 1.5, row.low.y + row.height_mm() * 0.28}, cell.label, label_style);
    pen.fitted({x + 1.5, row.low.y + row.height_mm() * 0.66}, cell.value, wide - 3, value_style);
    x += wide;
  }
}

std::string sheet_number(const SheetTitle& title) { return fmt::format("{} of {}", title.number, title.count); }

/// The longest of 1, 2, 5 times a power of ten that is no longer than `most`.
double round_length(double most) {
  const double power = std::pow(10, std::floor(std::log10(most)));
  for (const double step : {5.0, 2.0}) {
    if (step * power <= most) return step * power;
  }
  return power;
}

}  // namespace

SheetBox sheet_frame_box(double width_mm, double height_mm) {
  return {{sheet_margin_mm, sheet_margin_mm}, {width_mm - sheet_margin_mm, height_mm - sheet_margin_mm}};
}

void draw_frame(SheetPen& pen, const SheetBox& frame) { pen.box(frame, palette::none, frame_line); }

void draw_title_block(SheetPen& pen, const SheetBox& box, const SheetTitle& title) {
  const std::vector<std::vector<TitleCell>> rows{{{"yard", title.yard, 1}},
                                                 {{"owner", title.block.owner, 1}},
                                                 {{"place", title.block.place, 1}},
                                                 {{"drawn by", title.block.drawn_by, 1}, {"date", title.block.date, 1}},
                                                 {{"phase", title.phase, 1.4}, {"revision", title.block.revision, 1}},
                                                 {{"sheet", title.sheet, 1.4}, {"number", sheet_number(title), 1}},
                                                 {{"scale", title.scale, 1}}};
  const double high = box.height_mm() / static_cast<double>(rows.size());
  double y = box.low.y;
  for (const auto& cells : rows) {
    pen.line({box.low.x, y}, {box.high.x, y}, thin_line);
    draw_cells(pen, {{box.low.x, y}, {box.high.x, y + high}}, cells);
    y += high;
  }
}

void draw_title_strip(SheetPen& pen, const SheetBox& frame, const SheetTitle& title) {
  const double top = frame.high.y - title_strip_mm;
  pen.line({frame.low.x, top}, {frame.high.x, top}, thin_line);
  draw_cells(pen, {{frame.low.x, top}, frame.high},
             {{"yard", title.yard, 2.4},
              {"owner", title.block.owner, 2},
              {"place", title.block.place, 2},
              {"drawn by", title.block.drawn_by, 1.4},
              {"date", title.block.date, 1.1},
              {"revision", title.block.revision, 0.8},
              {"phase", title.phase, 2},
              {"sheet", title.sheet, 1.4},
              {"number", sheet_number(title), 0.9}});
}

void draw_north_arrow(SheetPen& pen, SheetPoint centre, double radius_mm) {
  const double r = radius_mm;
  SymbolMarks marks{CircleMark{{0, 0}, r, palette::none, {palette::ink, 0.2, {}}},
                    AreaMark{{{{0, -r * 1.25}, {r * 0.32, r * 0.75}, {0, r * 0.5}}}, palette::ink},
                    LineMark{{{0, -r * 1.25}, {-r * 0.32, r * 0.75}, {0, r * 0.5}}, {palette::ink, 0.25, {}}, true}};
  pen.symbol(centre, std::move(marks));
  pen.words(centre + SheetVector{0, -r * 1.25 - 2.4}, "N", {3.2, palette::ink, true, Anchor::middle});
}

void draw_scale_bar(SheetPen& pen, SheetPoint left, double most_mm, double metres_per_mm, UnitSystem units) {
  const Unit& unit = shown_unit(Quantity::length, units);
  const double whole = round_length(most_mm * metres_per_mm / unit.factor);
  const double whole_mm = whole * unit.factor / metres_per_mm;
  constexpr int bars = 4;
  constexpr double high_mm = 1.4;
  for (int i = 0; i < bars; ++i) {
    const double x = left.x + whole_mm * i / bars;
    pen.box({{x, left.y}, {x + whole_mm / bars, left.y + high_mm}}, i % 2 == 0 ? palette::ink : palette::white,
            {palette::ink, 0.2, {}});
  }
  for (const double part : {0.0, 0.5, 1.0}) {
    const std::string text = fmt::format("{:.6g}", whole * part) + (part == 1 ? " " + std::string{unit.suffix} : "");
    pen.words({left.x + whole_mm * part, left.y + high_mm + 2}, text, {1.9, palette::ink, false, Anchor::middle});
  }
}

}  // namespace yardwright
