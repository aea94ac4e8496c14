#include "geom/sheet/overlay.hpp"

#include <algorithm>

#include "geom/shape/path.hpp"
#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/symbol.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright {

namespace {

constexpr double letter_mm = 2.1;
constexpr double sign_mm = 2.1;   ///< radius of a sign
constexpr double over_sign = 60;  ///< what words on a sign cost: more than any leader line
constexpr double over_place = 4;

/// Findings at one place, to be marked once; the worst comes first.
struct Spot {
  SitePoint at;
  std::vector<std::size_t> findings;  ///< where they stand in the list
};

SitePoint place_of(const Finding& finding) { return pose_at(finding.place, length(finding.place) / 2).at; }

bool shown(const Finding& finding, const OverlayStyle& style) {
  if (style.question && finding.question != *style.question) return false;
  return !finding.place.empty() && finding.verdict <= style.least;
}

std::vector<Spot> spots_of(const Findings& findings, const OverlayStyle& style) {
  constexpr double same_place_mm = 3;
  std::vector<Spot> spots;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (!shown(findings[i], style)) continue;
    const SitePoint at = place_of(findings[i]);
    const auto near = std::ranges::find_if(
        spots, [&](const Spot& spot) { return distance(spot.at, at) < same_place_mm * style.metres_per_mm; });
    if (near == spots.end())
      spots.push_back({at, {i}});
    else
      near->findings.push_back(i);
  }
  for (Spot& spot : spots)
    std::ranges::stable_sort(spot.findings, {}, [&](std::size_t i) { return findings[i].verdict; });
  return spots;
}

std::string numbers_of(const Spot& spot) {
  std::string text;
  for (const std::size_t i : spot.findings) text += (text.empty() ? "" : ", ") + std::to_string(i + 1);
  return text;
}

/// What is said at a place: of the worst finding its margin and mend, of another one its margin.
std::vector<std::string> words_of(const Spot& spot, const Findings& findings, const OverlayStyle& style) {
  if (style.words == OverlayWords::numbers) return {numbers_of(spot)};
  const auto loud = [&](const Finding& finding) {
    return finding.verdict == Verdict::not_checked ? finding.title : margin_words(finding, style.units);
  };
  const Finding& worst_one = findings[spot.findings.front()];
  std::vector<std::string> lines{loud(worst_one)};
  if (!worst_one.mends.empty()) lines.push_back(mend_words(worst_one.mends.front(), style.units));
  for (std::size_t i = 1; i < std::min<std::size_t>(2, spot.findings.size()); ++i)
    lines.push_back(loud(findings[spot.findings[i]]));
  return lines;
}

Label label_of(const Spot& place, const Findings& findings, const OverlayStyle& style) {
  Label label;
  const Colour colour = palette::of(findings[place.findings.front()].verdict);
  for (std::string& text : words_of(place, findings, style)) {
    const bool first = label.lines.empty();
    label.lines.push_back({std::move(text), letter_mm, first ? colour : palette::ink, first});
  }
  label.card = colour;
  add_spots_beside(label, place.at, sign_mm);
  return label;
}

void add_sign(PlanParts& parts, const Spot& place, const Finding& worst_one, const OverlayStyle& style) {
  const Colour colour = palette::of(worst_one.verdict);
  if (worst_one.place.size() > 1 && style.places) {
    parts.shapes.push_back(line(worst_one.place, {colour, 0.5, {1.6, 1.0}}));
    parts.obstacles.push_back({worst_one.place, over_place, false, 0, {}});
  }
  parts.shapes.push_back(spot(place.at, sign_mm, palette::card, {colour, 0.25, {}}));
  parts.shapes.push_back(SymbolMark{on_plan(place.at), scaled(symbol_of(worst_one.verdict), 0.8)});
  parts.obstacles.push_back({Disc{place.at, 0}, over_sign, true, sign_mm, {}});
}

}  // namespace

PlanParts finding_parts(const Findings& findings, const OverlayStyle& style) {
  PlanParts parts;
  for (const Spot& place : spots_of(findings, style)) {
    add_sign(parts, place, findings[place.findings.front()], style);
    parts.labels.push_back(label_of(place, findings, style));
  }
  return parts;
}

Drawing finding_overlay(const Findings& findings, const OverlayStyle& style) {
  return with_labels(finding_parts(findings, style), {style.metres_per_mm, {}});
}

}  // namespace yardwright
