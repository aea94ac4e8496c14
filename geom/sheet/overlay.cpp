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
    for (const std::string& text : lines) width = std::max(width, rough_width_mm(text, letter_mm) * 1.11);
    return width + 2 * edge_mm;
  }
  double height_mm() const { return line_mm * static_cast<double>(lines.size()) + 2 * edge_mm * 0.7; }
};

/// Findings at one place, to be marked once; the worst comes first.
struct Spot {
  SitePoint at;
  std::vector<std::size_t> findings;  ///< where they stand in the list
};

SitePoint place_of(const Finding& finding) { return pose_at(finding.place, length(finding.place) / 2).at; }

bool shown(const Finding& finding, const OverlayStyle& style) {
  return !finding.place.empty() && (style.passes || finding.verdict != Verdict::pass);
}

std::vector<Spot> spots_of(const Findings& findings, const OverlayStyle& style) {
  constexpr double same_place_mm = 3;
  std::vector<Spot> spots;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (!shown(findings[i], style)) continue;
    const SitePoint at = place_of(findings[i]);
    const auto near = std::ranges::find_if(
        spots, [&](const Spot& spot) { return distance(spot.at, at) < same_place_mm * style.metres_per_mm; });
    if (near == spots.end()) spots.push_back({at, {i}});
    else near->findings.push_back(i);
  }
  for (Spot& spot : spots) std::ranges::stable_sort(spot.findings, {}, [&](std::size_t i) { return findings[i].verdict; });
  return spots;
}

std::string numbers_of(const Spot& spot) {
  std::string text;
  for (const std::size_t i : spot.findings) text += (text.empty() ? "" : ", ") + std::to_string(i + 1);
  return text;
}

/// What is said at a place: of the worst finding its margin and mend, of another one its margin.
Label label_of(const Spot& spot, const Findings& findings, const OverlayStyle& style) {
  if (style.words == OverlayWords::numbers) return {{numbers_of(spot)}};
  const auto loud = [&](const Finding& finding) {
    return finding.verdict == Verdict::not_checked ? finding.title : margin_words(finding, style.units);
  };
  const Finding& worst_one = findings[spot.findings.front()];
  Label label{{loud(worst_one)}};
  if (!worst_one.mends.empty()) label.lines.push_back(mend_words(worst_one.mends.front(), style.units));
  for (std::size_t i = 1; i < std::min<std::size_t>(2, spot.findings.size()); ++i) label.lines.push_back(loud(findings[spot.findings[i]]));
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

void add_symbol(Marks& marks, const Spot& place, const Finding& worst_one) {
  if (worst_one.place.size() > 1) marks.push_back(line(worst_one.place, {palette::of(worst_one.verdict), 0.5, {1.6, 1.0}}));
  marks.push_back(spot(place.at, 2.1, palette::card, {palette::of(worst_one.verdict), 0.25, {}}));
  marks.push_back(SymbolMark{on_plan(place.at), scaled(symbol_of(worst_one.verdict), 0.8)});
}

DrawVector on_paper_mm(SitePoint at, const OverlayStyle& style) { return {at.x / style.metres_per_mm, -at.y / style.metres_per_mm}; }

}  // namespace

Drawing finding_overlay(const Findings& findings, const OverlayStyle& style) {
  Drawing drawing;
  std::vector<LabelBox> taken;
  const std::vector<Spot> spots = spots_of(findings, style);
  for (const Spot& place : spots) {
    add_symbol(drawing.marks, place, findings[place.findings.front()]);
    const DrawVector middle = on_paper_mm(place.at, style);
    taken.push_back({middle - DrawVector{2.1, 2.1}, middle + DrawVector{2.1, 2.1}});
  }
  for (const Spot& place : spots) {
    const DrawVector anchor = on_paper_mm(place.at, style);
    const Label label = label_of(place, findings, style);
    const DrawVector offset = free_offset(anchor, label, taken);
    taken.push_back(box_at(anchor, label, offset));
    add_label(drawing.marks, place.at, label, offset, palette::of(findings[place.findings.front()].verdict));
  }
  return drawing;
}

}  // namespace yardwright
