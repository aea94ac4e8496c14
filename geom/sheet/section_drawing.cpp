#include "geom/sheet/section_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "geom/sheet/letter_widths.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/palette.hpp"
#include "geom/sheet/section_frame.hpp"
#include "geom/sheet/section_water_marks.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr double least_level_step_mm = 5, least_chainage_step_mm = 22;
const Stroke ruled{palette::rule_line, 0.2, {}};
const Stroke design{palette::ink, 0.5, {}};
const Stroke existing{palette::earth, 0.3, {1.4, 1.0}};
const Stroke walled{palette::quiet_ink, 0.3, {}};

using Points = std::vector<DrawPoint>;

TextMark number(DrawPoint at, double value, double step, Anchor anchor, DrawVector offset_mm) {
  TextMark mark;
  mark.at = at;
  mark.text = fmt::format("{:.{}f}", std::round(value / step) * step + 0.0, step < 0.1 ? 2 : step < 1 ? 1 : 0);
  mark.height_mm = section_letters_mm;
  mark.colour = palette::quiet_ink;
  mark.anchor = anchor;
  mark.offset_mm = offset_mm;
  return mark;
}

void add_levels(Marks& marks, const SectionFrame& frame, UnitSystem units) {
  const Unit& unit = shown_unit(Quantity::length, units);
  const double step = round_step(least_level_step_mm * frame.metres_per_mm / frame.exaggeration / unit.factor);
  const double low = std::ceil(frame.low_m / unit.factor / step - 1e-9);
  for (double i = low; i * step * unit.factor <= frame.high_m; ++i) {
    const double level_m = i * step * unit.factor;
    marks.push_back(LineMark{{frame.at(frame.from_m, level_m), frame.at(frame.to_m, level_m)}, ruled, false});
    TextMark mark = number(frame.at(frame.to_m, level_m), i * step, step, Anchor::left, {1.5, 0});
    if (level_m + step * unit.factor > frame.high_m) mark.text += fmt::format(" {}", unit.suffix);
    marks.push_back(mark);
  }
}

void add_chainage(Marks& marks, const SectionFrame& frame, double length_m, UnitSystem units) {
  const Unit& unit = shown_unit(Quantity::length, units);
  const double step = round_step(least_chainage_step_mm * frame.metres_per_mm / unit.factor);
  for (double i = 0; i * step * unit.factor <= length_m * (1 + 1e-9); ++i) {
    const double chainage_m = i * step * unit.factor;
    marks.push_back(LineMark{{frame.at(chainage_m, frame.low_m), frame.at(chainage_m, frame.high_m)}, ruled, false});
    TextMark mark = number(frame.at(chainage_m, frame.low_m), i * step, step, Anchor::middle, {0, 2.6});
    if (i == 0) mark.text += fmt::format(" {}", unit.suffix);
    marks.push_back(mark);
  }
}

/// Runs of points that have levels, so that a line breaks where the ground is not known.
template <class LevelOf>
std::vector<Points> runs_of(const SectionView& view, const SectionFrame& frame, LevelOf level_of) {
  std::vector<Points> runs(1);
  for (const SectionPoint& point : view.ground.points) {
    if (point.levels)
      runs.back().push_back(frame.at(point.chainage_m, level_of(*point.levels)));
    else if (!runs.back().empty())
      runs.emplace_back();
  }
  std::erase_if(runs, [](const Points& run) { return run.size() < 2; });
  return runs;
}

Points there_and_back(Points there, const Points& back) {
  there.insert(there.end(), back.rbegin(), back.rend());
  return there;
}

void add_ground(Marks& marks, const SectionView& view, const SectionFrame& frame) {
  const auto tops = runs_of(view, frame, [](const SectionLevels& levels) { return levels.design_m; });
  const auto grown = runs_of(view, frame, [](const SectionLevels& l) { return std::min(l.existing_m, l.design_m); });
  for (std::size_t i = 0; i < tops.size(); ++i) {
    const Points foot{frame.at(tops[i].front().x, frame.low_m), frame.at(tops[i].back().x, frame.low_m)};
    marks.push_back(AreaMark{{there_and_back(grown[i], foot)}, palette::gravel.faded(0.55)});
    marks.push_back(AreaMark{{there_and_back(tops[i], grown[i])}, palette::earth.faded(0.45)});
  }
}

void add_ground_lines(Marks& marks, const SectionView& view, const SectionFrame& frame) {
  for (Points& run : runs_of(view, frame, [](const SectionLevels& levels) { return levels.existing_m; }))
    marks.push_back(LineMark{std::move(run), existing, false});
  for (Points& run : runs_of(view, frame, [](const SectionLevels& levels) { return levels.design_m; }))
    marks.push_back(LineMark{std::move(run), design, false});
}

Points drawn(const SectionFrame& frame, const Points& points) {
  Points out;
  for (const DrawPoint point : points) out.push_back(frame.at(point.x, point.y));
  return out;
}

void add_water(Marks& marks, const SectionView& view, const SectionFrame& frame) {
  for (const WaterBody& body : water_bodies(view.ground, over_full_pits(view, view.water))) {
    const Points top = drawn(frame, body.top);
    marks.push_back(AreaMark{{there_and_back(top, drawn(frame, body.bed))}, palette::water.faded(0.5)});
    marks.push_back(LineMark{top, {palette::water, 0.35, {}}, false});
  }
  for (const WaterBody& body : water_bodies(view.ground, over_full_pits(view, view.deepest)))
    marks.push_back(LineMark{drawn(frame, body.top), {palette::water, 0.3, {0.6, 0.8}}, false});
}

/// Its four corners, cut off at the top of the field.
Points corners_of(const LineCrossing& crossing, const SectionFrame& frame) {
  const auto at = [&](double chainage_m, double level_m) {
    return frame.at(chainage_m, std::min(level_m, frame.high_m));
  };
  return {at(crossing.from_m, crossing.at_from->base_m), at(crossing.from_m, crossing.at_from->top_m),
          at(crossing.to_m, crossing.at_to->top_m), at(crossing.to_m, crossing.at_to->base_m)};
}

void add_standing(Marks& marks, const LineCrossing& crossing, const SectionFrame& frame) {
  if (crossing.is_below || !crossing.at_from || crossing.at_from->base_m >= frame.high_m) return;
  const Points corners = corners_of(crossing, frame);
  marks.push_back(AreaMark{{corners}, palette::steel});
  const bool cut_off = crossing.at_from->top_m > frame.high_m;
  marks.push_back(LineMark{corners, walled, !cut_off});
  if (!cut_off) return;
  auto& walls = std::get<LineMark>(marks.back()).points;
  walls = {corners[1], corners[0], corners[3], corners[2]};
}

/// Its water from end to end, up to its top.
void add_water_below(Marks& marks, const SectionView& view, const LineCrossing& crossing, const SectionFrame& frame) {
  Points top, bed;
  for (const WaterPoint& point : water_below(view, crossing)) {
    top.push_back(frame.at(point.chainage_m, std::min(point.level_m, frame.high_m)));
    bed.push_back(frame.at(point.chainage_m, std::min(point.bed_m, frame.high_m)));
  }
  if (top.empty()) return;
  marks.push_back(AreaMark{{there_and_back(top, bed)}, palette::water.faded(0.5)});
  marks.push_back(LineMark{std::move(top), {palette::water, 0.25, {}}, false});
}

void add_below(Marks& marks, const SectionView& view, const LineCrossing& crossing, const SectionFrame& frame) {
  if (!crossing.is_below || !crossing.at_from) return;
  const Points corners = corners_of(crossing, frame);
  marks.push_back(AreaMark{{corners}, palette::card});
  add_water_below(marks, view, crossing, frame);
  marks.push_back(LineMark{corners, {palette::ink, 0.35, {}}, true});
}

void add_groundwater(Marks& marks, const SectionView& view, const SectionFrame& frame) {
  if (!shows_groundwater(view)) return;
  const auto level_m = [&](const SectionLevels& levels) { return levels.existing_m - view.groundwater_depth_m; };
  for (Points& run : runs_of(view, frame, level_m))
    marks.push_back(LineMark{std::move(run), groundwater_stroke, false});
}

TextMark pit_words(const char* what, double level_m, UnitSystem units) {
  TextMark mark;
  mark.text = fmt::format("{} {}", what, text_of(level_m, Quantity::length, units));
  mark.height_mm = 2.2;
  mark.colour = palette::ink;
  mark.halo = palette::card.faded(0.8);
  return mark;
}

/// Of the rim and of the ground as far as words reach to the right of it: they stand under both.
double lowest_beside_m(const SectionView& view, const LineCrossing& pit, double reach_m) {
  double lowest_m = pit.at_to->top_m;
  for (const SectionPoint& point : view.ground.points) {
    if (point.levels && point.chainage_m >= pit.to_m && point.chainage_m <= pit.to_m + reach_m)
      lowest_m = std::min({lowest_m, point.levels->existing_m, point.levels->design_m});
  }
  return lowest_m;
}

/// "rim 901.4 ft" at the right of a pit, "floor 893.1 ft" under it.
void add_pit_levels(Marks& marks, const SectionView& view, const LineCrossing& pit, const SectionFrame& frame,
                    UnitSystem units) {
  if (!pit.is_pit || !pit.at_to) return;
  TextMark top = pit_words("rim", pit.at_to->top_m, units), floor = pit_words("floor", pit.at_to->base_m, units);
  const double reach_m = (width_of_words_mm(top.text, top.height_mm) + 2) * frame.metres_per_mm;
  top.at = frame.at(pit.to_m, std::min(lowest_beside_m(view, pit, reach_m), frame.high_m));
  top.offset_mm = {1, 2};
  floor.at = frame.at(std::midpoint(pit.from_m, pit.to_m), pit.at_to->base_m);
  floor.anchor = Anchor::middle;
  floor.offset_mm = {0, 2.2};
  marks.push_back(std::move(top));
  marks.push_back(std::move(floor));
}

/// So that a pit is drawn over the end of its tunnel.
std::vector<LineCrossing> longest_first(std::vector<LineCrossing> crossings) {
  std::ranges::stable_sort(crossings, std::greater{}, [](const LineCrossing& c) { return c.to_m - c.from_m; });
  return crossings;
}

/// The top of the highest thing with that middle, else the ground.
double pole_foot_m(const SectionView& view, const SectionFrame& frame, const SectionName& name) {
  const auto ground = levels_at(view.ground, name.names_m);
  double foot_m = ground ? ground->design_m : frame.high_m;
  for (const LineCrossing& crossing : view.crossings) {
    if (!crossing.at_from || std::abs((crossing.from_m + crossing.to_m) / 2 - name.names_m) > 1e-6) continue;
    const double top_m = std::midpoint(crossing.at_from->top_m, crossing.at_to->top_m);
    foot_m = std::max(foot_m, top_m);
  }
  return std::min(frame.high_m, foot_m);
}

void add_names(Marks& marks, const SectionView& view, const SectionFrame& frame) {
  const double level_per_mm = frame.metres_per_mm / frame.exaggeration;
  for (const SectionName& name : frame.names) {
    const double at_m = frame.high_m + (1 + name.row * section_row_mm + section_row_mm / 2) * level_per_mm;
    const DrawPoint foot = frame.at(name.names_m, pole_foot_m(view, frame, name));
    marks.push_back(LineMark{{foot, frame.at(name.names_m, at_m + section_row_mm / 2 * level_per_mm)},
                             {palette::faint_ink, 0.2, {}},
                             false});
    TextMark mark = number({foot.x, frame.at(0, at_m).y}, 0, 1, Anchor::left, {0.8, 0});
    mark.text = name.text;
    mark.colour = palette::ink;
    if (name.left_mm < name.pole_mm) {
      mark.anchor = Anchor::right;
      mark.offset_mm.x = -0.8;
    }
    marks.push_back(mark);
  }
}

}  // namespace

const Stroke groundwater_stroke{palette::water, 0.3, {2.4, 0.8, 0.5, 0.8}};

SectionView section_view(const Site& site, const DesignSurface& surface, const SitePath& path, ItemId along) {
  SectionView view{ground_section(surface, path), line_crossings(site, surface, path, along)};
  view.groundwater_depth_m = site.ground.groundwater_depth_m;
  for (const LineCrossing& crossing : view.crossings) view.names.push_back(title_of(*find(site, crossing.item)));
  return view;
}

SectionDrawing section_drawing(const SectionView& view, const SectionPaper& paper) {
  const auto frame = section_frame(view, paper);
  if (!frame) return {};
  SectionDrawing out{{}, frame->placement, frame->metres_per_mm, frame->exaggeration, frame->unnamed};
  Marks& marks = out.drawing.marks;
  add_levels(marks, *frame, paper.units);
  add_chainage(marks, *frame, view.ground.length_m(), paper.units);
  for (const LineCrossing& crossing : view.crossings) add_standing(marks, crossing, *frame);
  add_ground(marks, view, *frame);
  add_water(marks, view, *frame);
  add_groundwater(marks, view, *frame);
  for (const LineCrossing& crossing : longest_first(view.crossings)) add_below(marks, view, crossing, *frame);
  add_ground_lines(marks, view, *frame);
  for (const LineCrossing& crossing : view.crossings)
    if (paper.tells_pits) add_pit_levels(marks, view, crossing, *frame, paper.units);
  add_names(marks, view, *frame);
  return out;
}

bool shows_groundwater(const SectionView& view) {
  return view.groundwater_depth_m > 0 && view.groundwater_depth_m <= deepest_groundwater_m;
}

std::string exaggeration_words(double exaggeration) {
  if (exaggeration == 1) return "true to scale";
  return fmt::format("levels drawn {:g} times as large", exaggeration);
}

}  // namespace yardwright
