#include "geom/sheet/overlay.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "geom/shape/path.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/symbol.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright {

namespace {

constexpr double letter_mm = 2.1;
constexpr double line_mm = 3.0;
constexpr double edge_mm = 1.2;

/// A label's box on the paper, in millimetres right and down from the drawing's origin.
struct LabelBox {
  DrawVector low, high;
  bool meets(const LabelBox& other) const {
    return low.x < other.high.x && other.low.x < high.x && low.y < other.high.y && other.low.y < high.y;
  }
};

struct Label {
  std::vector<std::string> lines;  ///< the first is said loudest
  double width_mm() const {
    double width = 0;
    for (const std::string& text : lines) width = std::max(width, rough_width_mm(text, letter_mm) * 1.05);
    return width + 2 * edge_mm;
  }
  double height_mm() const { return line_mm * static_cast<double>(lines.size()) + 2 * edge_mm * 0.7; }
};

SitePoint place_of(const Finding& finding) { return pose_at(finding.place, length(finding.place) / 2).at; }

Label label_of(const Finding& finding, std::size_t number, const OverlayStyle& style) {
  if (style.words == OverlayWords::numbers) return {{std::to_string(number)}};
  Label label{{finding.verdict == Verdict::not_checked ? finding.title : margin_words(finding, style.units)}};
  if (!finding.mends.empty()) label.lines.push_back(mend_words(finding.mends.front(), style.units));
  return label;
}

LabelBox box_at(DrawVector anchor, const Label& label, DrawVector offset) {
  const DrawVector low = anchor + offset;
  return {low, low + DrawVector{label.width_mm(), label.height_mm()}};
}

/// The first of the places around the symbol where no other label lies; the last one where all are taken.
DrawVector free_offset(DrawVector anchor, const Label& label, const std::vector<LabelBox>& taken) {
  const double wide = label.width_mm(), high = label.height_mm(), gap = 2.2;
  std::vector<DrawVector> offsets;
  for (int ring = 0; ring < 6; ++ring) {
    const double away = gap + ring * (high + 0.6);
    offsets.insert(offsets.end(), {{gap, -high / 2 + ring * (high + 0.6)}, {gap, -high / 2 - ring * (high + 0.6)},
                                   {-gap - wide, -high / 2 + ring * (high + 0.6)}, {-gap - wide, -high / 2 - ring * (high + 0.6)},
                                   {-wide / 2, away}, {-wide / 2, -away - high}});
  }
  for (const DrawVector offset : offsets) {
    const LabelBox box = box_at(anchor, label, offset);
    if (std::ranges::none_of(taken, [&](const LabelBox& other) { return box.meets(other); })) return offset;
  }
  return offsets.back();
}

/// A card behind the words, and a thin line to it where it stands away from its symbol.
SymbolMark card(SitePoint at, const Label& label, DrawVector offset, Colour colour) {
  const double wide = label.width_mm(), high = label.height_mm();
  const DrawPoint low{offset.x, offset.y};
  const std::vector<DrawPoint> corners{low, low + DrawVector{wide, 0}, low + DrawVector{wide, high}, low + DrawVector{0, high}};
  const DrawPoint near{std::clamp(0.0, low.x, low.x + wide), std::clamp(0.0, low.y, low.y + high)};
  return {on_plan(at), {LineMark{{{0, 0}, near}, {colour, 0.2, {}}, false}, AreaMark{{corners}, palette::card},
                        LineMark{corners, {colour, 0.3, {}}, true}}};
}

void add_label(Marks& marks, SitePoint at, const Label& label, DrawVector offset, Colour colour) {
  marks.push_back(card(at, label, offset, colour));
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    TextMark text = words(at, label.lines[i], letter_mm, i == 0 ? colour : palette::ink, Anchor::left);
    text.bold = i == 0;
    text.halo = palette::none;
    text.offset_mm = offset + DrawVector{edge_mm, edge_mm * 0.7 + (static_cast<double>(i) + 0.5) * line_mm};
    marks.push_back(text);
  }
}

void add_symbol(Marks& marks, const Finding& finding) {
  const SitePoint at = place_of(finding);
  if (finding.place.size() > 1) marks.push_back(line(finding.place, {palette::of(finding.verdict), 0.5, {1.6, 1.0}}));
  marks.push_back(spot(at, 2.1, palette::card, {palette::of(finding.verdict), 0.25, {}}));
  marks.push_back(SymbolMark{on_plan(at), scaled(symbol_of(finding.verdict), 0.8)});
}

bool shown(const Finding& finding, const OverlayStyle& style) {
  return !finding.place.empty() && (style.passes || finding.verdict != Verdict::pass);
}

}  // namespace

Drawing finding_overlay(const Findings& findings, const OverlayStyle& style) {
  Drawing drawing;
  std::vector<LabelBox> taken;
  for (const Finding& finding : findings) {
    if (!shown(finding, style)) continue;
    add_symbol(drawing.marks, finding);
    const SitePoint at = place_of(finding);
    const DrawVector middle{at.x / style.metres_per_mm, -at.y / style.metres_per_mm};
    taken.push_back({middle - DrawVector{2.1, 2.1}, middle + DrawVector{2.1, 2.1}});
  }
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (!shown(findings[i], style)) continue;
    const SitePoint at = place_of(findings[i]);
    const DrawVector anchor{at.x / style.metres_per_mm, -at.y / style.metres_per_mm};
    const Label label = label_of(findings[i], i + 1, style);
    const DrawVector offset = free_offset(anchor, label, taken);
    taken.push_back(box_at(anchor, label, offset));
    add_label(drawing.marks, at, label, offset, palette::of(findings[i].verdict));
  }
  return drawing;
}

}  // namespace yardwright
