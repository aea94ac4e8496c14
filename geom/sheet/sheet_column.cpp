#include "geom/sheet/sheet_column.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/site/finding_words.hpp"

namespace yardwright {

namespace {

constexpr double column_pad_mm = 3;
constexpr double finding_indent_mm = 9;
constexpr double between_findings_mm = 1.8;
constexpr double least_block_mm = 16;  ///< a heading with something under it

const TextStyle finding_title{2.1, palette::ink, true, Anchor::left};
const TextStyle quiet{2.0, palette::quiet_ink, false, Anchor::left};
const TextStyle plain{2.0, palette::ink, false, Anchor::left};

Findings of_question(const Findings& findings, Question question) {
  Findings mine;
  std::ranges::copy_if(findings, std::back_inserter(mine),
                       [&](const Finding& finding) { return finding.question == question; });
  return mine;
}

/// "3 to mend", "2 to look at", "passes".
std::string in_words(const Findings& mine) {
  const auto count = [&](Verdict verdict) { return std::ranges::count(mine, verdict, &Finding::verdict); };
  switch (worst(mine)) {
    case Verdict::fail: return fmt::format("{} to mend", count(Verdict::fail));
    case Verdict::caution: return fmt::format("{} to look at", count(Verdict::caution));
    case Verdict::pass: return "passes";
    case Verdict::not_checked: break;
  }
  return mine.empty() || count(Verdict::pass) == 0 ? "not checked" : "partly checked";
}

bool wants_care(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

/// "short by 15.3°: 21.7° of 37.0° needed".
std::string amount_words(const Finding& finding, UnitSystem units) {
  const std::string margin = margin_words(finding, units);
  return (margin.empty() ? "" : margin + ": ") + measured_words(finding, units);
}

std::string first_mend(const Finding& finding, UnitSystem units) {
  return finding.mends.empty() ? finding.note : "mend: " + mend_words(finding.mends.front(), units);
}

}  // namespace

KeyRow key_of_line(const Stroke& stroke, std::string words) {
  return {{LineMark{{{0, 0}, {6, 0}}, stroke, false}}, std::move(words)};
}

KeyRow key_of_area(Colour fill, const Stroke& edge, std::string words) {
  const std::vector<DrawPoint> box{{0, -1.2}, {6, -1.2}, {6, 1.2}, {0, 1.2}};
  return {{AreaMark{{box}, fill}, LineMark{box, edge, true}}, std::move(words)};
}

SheetColumn::SheetColumn(SheetPen& pen, std::vector<SheetBox> panels) : pen_{pen}, panels_{std::move(panels)} {
  begin_panel(0);
}

void SheetColumn::begin_panel(std::size_t panel) {
  panel_ = panel;
  left_ = panels_[panel].low.x + column_pad_mm;
  width_ = panels_[panel].width_mm() - 2 * column_pad_mm;
  y_ = panels_[panel].low.y + 4;
}

double SheetColumn::room_mm() const {
  const double foot_mm = panel_ + 1 == panels_.size() ? title_block_mm + north_and_scale_mm : 2;
  return panels_[panel_].high.y - foot_mm - y_;
}

void SheetColumn::make_room(double height_mm) {
  while (height_mm > room_mm() && panel_ + 1 < panels_.size()) begin_panel(panel_ + 1);
}

double SheetColumn::height_of(const std::string& text, double width_mm, const TextStyle& style) const {
  return static_cast<double>(pen_.measure().wrapped(text, style.height_mm, width_mm, style.bold).size()) *
         pen_.line_height_mm(style);
}

void SheetColumn::title(const std::string& loud, const std::string& quiet_words) {
  y_ = pen_.paragraph({left_, y_}, loud, width_, {4.6, palette::ink, true, Anchor::left});
  if (!quiet_words.empty())
    y_ = pen_.paragraph({left_, y_}, quiet_words, width_, {2.3, palette::quiet_ink, false, Anchor::left});
  y_ += 3;
}

void SheetColumn::heading(const std::string& text) {
  pen_.words({left_, y_}, text, {2.0, palette::quiet_ink, true, Anchor::left});
  pen_.line({left_, y_ + 2}, {left_ + width_, y_ + 2}, {palette::rule_line, 0.2, {}});
  y_ += 5;
}

void SheetColumn::paragraph(const std::string& text) {
  make_room(height_of(text, width_, quiet));
  y_ = pen_.paragraph({left_, y_ - 1}, text, width_, quiet) + 2.5;
}

void SheetColumn::key(const std::vector<KeyRow>& rows) {
  if (rows.empty()) return;
  make_room(least_block_mm);
  heading("key");
  constexpr double words_at_mm = 9;
  for (const KeyRow& row : rows) {
    const double x = row.sample.empty() ? 0 : words_at_mm;
    make_room(height_of(row.words, width_ - x, plain));
    pen_.symbol({left_, y_}, row.sample);
    y_ = pen_.paragraph({left_ + x, y_ - 1.4}, row.words, width_ - x, plain) + 2.2;
  }
  y_ += 1.5;
}

void SheetColumn::questions(const Findings& findings, const std::vector<int>& sheets) {
  constexpr double row_mm = 4.6;
  make_room(5 + row_mm * static_cast<double>(every_question.size()));
  heading("the six questions");
  for (const Question question : every_question) {
    const auto at = static_cast<std::size_t>(question);
    const Findings mine = of_question(findings, question);
    pen_.symbol({left_ + 1.6, y_}, symbol_of(worst(mine)));
    pen_.words({left_ + 5, y_}, std::string{names_of(question)[at]}, {2.2, palette::ink, true, Anchor::left});
    pen_.words({left_ + 15, y_}, in_words(mine), {2.1, palette::of(worst(mine)), false, Anchor::left});
    if (sheets[at] > 0)
      pen_.words({left_ + width_, y_}, fmt::format("sheet {}", sheets[at]),
                 {2.0, palette::quiet_ink, false, Anchor::right});
    y_ += row_mm;
  }
  y_ += 2;
}

void SheetColumn::legend(const Site& site) {
  std::vector<Thing> present;
  for (Thing& kind : every_kind()) {
    const auto same = [&](const Item& item) { return item.thing.index() == kind.index(); };
    if (std::ranges::any_of(site.items, same)) present.push_back(std::move(kind));
  }
  if (present.empty()) return;
  constexpr double least_row_mm = 4.4, most_row_mm = 7.5;
  const std::size_t rows = (present.size() + 1) / 2;
  make_room(least_row_mm * static_cast<double>(rows) + 7);
  heading("legend");
  const double row_mm = std::clamp((room_mm() - 2) / static_cast<double>(rows), 2.6, most_row_mm);
  const double factor = std::min(0.85, row_mm / (2.2 * kind_symbol_half_mm));
  const double text_mm = std::clamp(row_mm * 0.42, 1.6, 2.2);
  for (std::size_t i = 0; i < present.size(); ++i) {
    const double x = left_ + (i < rows ? 0 : width_ / 2);
    const double y = y_ + (static_cast<double>(i % rows) + 0.35) * row_mm;
    const double icon_mm = kind_symbol_half_mm * factor;
    pen_.symbol({x + icon_mm, y}, scaled(symbol_of_kind(kind_key(present[i])), factor));
    pen_.fitted({x + 2 * icon_mm + 1.2, y}, std::string{kind_label(present[i])}, width_ / 2 - 2 * icon_mm - 2,
                {text_mm});
  }
  y_ += static_cast<double>(rows) * row_mm;
}

double SheetColumn::height_of(const Finding& finding, UnitSystem units) const {
  const double wide = width_ - finding_indent_mm;
  return height_of(headline(finding), wide, finding_title) + height_of(amount_words(finding, units), wide, plain) +
         height_of(first_mend(finding, units), wide, quiet) + between_findings_mm;
}

void SheetColumn::finding(const Finding& finding, std::size_t number, UnitSystem units) {
  pen_.symbol({left_ + 1.6, y_ + 1.4}, scaled(symbol_of(finding.verdict), 0.8));
  pen_.words({left_ + 4, y_ + 1.4}, std::to_string(number), {2.1, palette::of(finding.verdict), true, Anchor::left});
  const double x = left_ + finding_indent_mm, wide = width_ - finding_indent_mm;
  TextStyle amount = plain;
  amount.colour = palette::of(finding.verdict);
  y_ = pen_.paragraph({x, y_}, headline(finding), wide, finding_title);
  y_ = pen_.paragraph({x, y_}, amount_words(finding, units), wide, amount);
  y_ = pen_.paragraph({x, y_}, first_mend(finding, units), wide, quiet) + between_findings_mm;
}

void SheetColumn::findings_of(Question question, const Findings& findings, UnitSystem units, const std::string& rest) {
  constexpr double last_line_mm = 4;
  make_room(least_block_mm);
  heading("to mend and to look at");
  int left_out = 0, shown = 0;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].question != question || !wants_care(findings[i])) continue;
    if (left_out == 0) make_room(height_of(findings[i], units) + last_line_mm);
    if (left_out > 0 || height_of(findings[i], units) + last_line_mm > room_mm()) {
      ++left_out;
      continue;
    }
    finding(findings[i], i + 1, units);
    ++shown;
  }
  const std::string words = left_out > 0 ? fmt::format("and {} more; all of them: {}", left_out, rest)
                            : shown > 0  ? "what passes: " + rest
                                         : "Nothing. What passes: " + rest;
  pen_.fitted({left_, y_ + 1.4}, words, width_, quiet);
  y_ += last_line_mm;
}

void SheetColumn::foot(const SheetTitle& title, double metres_per_mm, UnitSystem units) {
  begin_panel(panels_.size() - 1);
  const SheetBox& box = panels_.back();
  const double top = box.high.y - title_block_mm;
  draw_title_block(pen_, {{box.low.x, top}, box.high}, title);
  draw_north_arrow(pen_, {box.high.x - 10, top - 9}, 4.2);
  draw_scale_bar(pen_, {left_ + 2, top - 10}, width_ - 26, metres_per_mm, units);
  pen_.words({left_ + 1, top - 15}, title.scale, {2.4, palette::ink, true, Anchor::left});
}

}  // namespace yardwright
