#include "editor/panels/side_scene.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/canvas/device.hpp"
#include "editor/canvas/reach_overlay.hpp"
#include "editor/session/snap.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

constexpr double around_m = 8;  // ground shown beyond the leg and the receiver

/// Metres along the spout and level to the panel; the drawing's y goes up.
struct Frame {
  Placement placement;
  double least_m = 0, most_m = 0;  ///< along
  double low_m = 0, high_m = 0;    ///< levels
};

double half_width_m(const Thing& thing) {
  if (const Bin* bin = std::get_if<Bin>(&thing)) return bin->diameter_m / 2;
  const Box box = box_of(extent(thing));
  return std::min(box.high.x - box.low.x, box.high.y - box.low.y) / 2;
}

double ground_at(const SideScene& scene, double along_m) {
  const auto& line = scene.spout.line;
  return scene.work.answers.surface.level_m(line.from + unit(line.to - line.from) * along_m);
}

double leg_top_m(const SideScene& scene) {
  return ground_at(scene, 0) + std::max(scene.leg.discharge_height_m, scene.spout.discharge_needed_m);
}

Frame frame_of(const SideScene& scene, const canvas::Rect& place) {
  const look::Look& look = scene.work.look;
  Frame frame;
  frame.least_m = -around_m;
  frame.most_m = scene.spout.line.run_m() + half_width_m(scene.receiver.thing) + around_m;
  frame.low_m = std::min(ground_at(scene, 0), ground_at(scene, scene.spout.line.run_m())) - scene.leg.boot.depth_m - 1;
  frame.high_m = std::max(leg_top_m(scene), scene.spout.line.to_level_m) + 2;
  const double left = static_cast<double>(place.low.x + look.px(24)),
               right = static_cast<double>(place.high.x - look.px(70));
  const double top = static_cast<double>(place.low.y + look.px(40)),
               bottom = static_cast<double>(place.high.y - look.px(14));
  const double per_m =
      std::min((right - left) / (frame.most_m - frame.least_m), (bottom - top) / (frame.high_m - frame.low_m));
  const double spare = (right - left) - per_m * (frame.most_m - frame.least_m);
  frame.least_m -= spare / per_m / 2;
  frame.most_m += spare / per_m / 2;
  frame.placement = {left - frame.least_m * per_m, bottom + frame.low_m * per_m, per_m, look.px_per_mm()};
  return frame;
}

using Points = std::vector<DrawPoint>;

void add_levels(Drawing& drawing, const SideScene& scene, const Frame& frame) {
  const UnitSystem units = scene.work.units();
  const double per_unit = shown_unit(Quantity::length, units).factor;
  const double step_m = session::round_up_to_step((frame.high_m - frame.low_m) / per_unit / 5) * per_unit;
  for (double level = std::ceil(frame.low_m / step_m) * step_m; level < frame.high_m; level += step_m) {
    drawing.marks.push_back(
        LineMark{{{frame.least_m, level}, {frame.most_m, level}}, {palette::rule_line.faded(0.7), 0.2, {}}, false});
    TextMark mark;
    mark.at = {frame.most_m, level};
    mark.text = fmt::format("{:.0f}", std::round(level / per_unit) + 0.0);  // no "-0"
    mark.height_mm = 2.5;
    mark.colour = palette::quiet_ink;
    mark.halo = palette::none;
    mark.offset_mm = {2, 0};
    drawing.marks.push_back(mark);
  }
}

void add_ground(Drawing& drawing, const SideScene& scene, const Frame& frame) {
  Points line;
  for (int i = 0; i <= 120; ++i) {
    const double along = frame.least_m + (frame.most_m - frame.least_m) * i / 120;
    line.push_back({along, ground_at(scene, along)});
  }
  Points area = line;
  area.push_back({frame.most_m, frame.low_m});
  area.push_back({frame.least_m, frame.low_m});
  drawing.marks.push_back(AreaMark{{area}, palette::gravel.faded(0.35)});
  drawing.marks.push_back(LineMark{line, {palette::earth, 0.45, {}}, false});
}

void add_shape(Drawing& drawing, Points points, Colour fill, const Stroke& stroke) {
  drawing.marks.push_back(AreaMark{{points}, fill});
  drawing.marks.push_back(LineMark{std::move(points), stroke, true});
}

Points box(double left, double right, double low, double high) {
  return {{left, low}, {right, low}, {right, high}, {left, high}};
}

void add_leg(Drawing& drawing, const SideScene& scene) {
  const Leg& leg = scene.leg;
  const double ground = ground_at(scene, 0), top = ground + leg.discharge_height_m, half = leg.tower_width_m / 2;
  const double outlet = scene.spout.line.from_level_m;
  const Stroke ink{palette::ink, 0.35, {}};
  drawing.marks.push_back(LineMark{
      box(-leg.boot.length_m / 2, leg.boot.length_m / 2, ground - leg.boot.depth_m, ground + leg.boot.rim_height_m),
      {palette::ink, 0.3, {1, 0.7}},
      true});
  add_shape(drawing, box(-half * 0.7, half * 0.7, ground - leg.boot.depth_m * 0.8, top), palette::white, ink);
  add_shape(drawing, {{-half * 1.3, outlet}, {half * 1.3, outlet}, {half * 0.7, top}, {-half * 0.7, top}},
            palette::steel, ink);
}

void add_bin(Drawing& drawing, const Bin& bin, double along, double ground) {
  const double base = ground + bin.foundation_height_m, eave = base + bin.eave_height_m, half = bin.diameter_m / 2;
  const double peak = eave + half * tan(bin.roof_slope);
  const Stroke ink{palette::ink, 0.35, {}};
  add_shape(drawing, box(along - half, along + half, ground, base), palette::paved, ink);
  add_shape(drawing,
            {{along - half, base}, {along + half, base}, {along + half, eave}, {along, peak}, {along - half, eave}},
            palette::steel, ink);
}

void add_receiver(Drawing& drawing, const SideScene& scene) {
  const double along = scene.spout.line.run_m(), ground = ground_at(scene, along);
  if (const Bin* bin = as<Bin>(scene.receiver)) return add_bin(drawing, *bin, along, ground);
  const double half = half_width_m(scene.receiver.thing);
  add_shape(drawing, box(along - half, along + half, ground, scene.spout.line.to_level_m), palette::steel,
            {palette::ink, 0.35, {}});
}

TextMark caption(DrawPoint at, std::string text, Colour colour, Anchor anchor) {
  TextMark mark;
  mark.at = at;
  mark.text = std::move(text);
  mark.height_mm = 2.6;
  mark.colour = colour;
  mark.anchor = anchor;
  mark.halo = palette::card;
  mark.bold = true;
  return mark;
}

/// The outlet lifted to where the spout has its least slope.
void add_mend(Drawing& drawing, const SideScene& scene) {
  const double lift = scene.spout.discharge_needed_m - scene.leg.discharge_height_m;
  if (lift <= 0) return;
  const auto& line = scene.spout.line;
  const DrawPoint now{0, line.from_level_m}, raised{0, line.from_level_m + lift}, end{line.run_m(), line.to_level_m};
  const Stroke dotted{palette::pass, 0.45, {0.5, 0.8}};
  drawing.marks.push_back(LineMark{{now, raised}, {palette::pass, 0.45, {}}, false});
  drawing.marks.push_back(LineMark{{raised, end}, dotted, false});
  drawing.marks.push_back(
      SymbolMark{{0, raised.y}, {CircleMark{{0, 0}, 0.9, palette::white, {palette::pass, 0.4, {}}}}});
  TextMark mark = caption(between(raised, end, 0.3), "", palette::pass, Anchor::left);
  mark.text = fmt::format("at {}: {}", text_of(scene.spout.discharge_needed_m, Quantity::length, scene.work.units()),
                          text_of(scene.spout.least_slope.as_degrees(), Quantity::angle, scene.work.units()));
  mark.offset_mm = {1, -2.4};
  drawing.marks.push_back(mark);
}

void add_spout(Drawing& drawing, const SideScene& scene) {
  const auto& line = scene.spout.line;
  const Colour colour = scene.verdict == Verdict::pass ? palette::reach : palette::of(scene.verdict);
  const std::vector<double> dash = scene.verdict == Verdict::fail ? std::vector{2.0, 1.1} : std::vector<double>{};
  drawing.marks.push_back(
      LineMark{{{0, line.from_level_m}, {line.run_m(), line.to_level_m}}, {colour, 0.6, dash}, false});
}

/// In the bin where it has the room, else beside it.
TextMark bin_size(const SideScene& scene, const Frame& frame, const Bin& bin) {
  const auto length = [&](double m) { return text_of(m, Quantity::length, scene.work.units()); };
  const double along = scene.spout.line.run_m(),
               level = ground_at(scene, along) + bin.foundation_height_m + bin.eave_height_m / 2;
  TextMark size = caption({along, level}, length(bin.diameter_m) + ", eave " + length(bin.eave_height_m), palette::ink,
                          Anchor::middle);
  const double letters_px = size.height_mm * frame.placement.per_mm;
  const auto wide_px = static_cast<double>(
      scene.work.look.letters.strong->CalcTextSizeA(static_cast<float>(letters_px), 1e6F, 0, size.text.c_str()).x);
  size.halo = palette::steel;
  if (wide_px + letters_px < bin.diameter_m * frame.placement.per_unit) return size;
  size.halo = palette::card;
  size.at.x += bin.diameter_m / 2;
  size.anchor = Anchor::left;
  size.offset_mm = {1.5, 0};
  return size;
}

void add_captions(Drawing& drawing, const SideScene& scene, const Frame& frame) {
  const UnitSystem units = scene.work.units();
  const double ground = ground_at(scene, 0);
  TextMark height =
      caption({0, ground + scene.leg.discharge_height_m},
              text_of(scene.leg.discharge_height_m, Quantity::length, units), palette::ink, Anchor::right);
  height.offset_mm = {-2.5, 0};
  drawing.marks.push_back(height);
  if (const Bin* bin = as<Bin>(scene.receiver)) drawing.marks.push_back(bin_size(scene, frame, *bin));
}

}  // namespace

void draw_side_scene(const SideScene& scene, const canvas::Rect& place) {
  const Frame frame = frame_of(scene, place);
  Drawing drawing;
  add_levels(drawing, scene, frame);
  add_ground(drawing, scene, frame);
  add_leg(drawing, scene);
  add_receiver(drawing, scene);
  add_mend(drawing, scene);
  add_spout(drawing, scene);
  add_captions(drawing, scene, frame);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  canvas::draw(drawing, frame.placement, scene.work.look, list);
  const auto& line = scene.spout.line;
  const DrawPoint middle{line.run_m() / 2, (line.from_level_m + line.to_level_m) / 2};
  canvas::draw_label(text_of(line.slope().as_degrees(), Quantity::angle, scene.work.units()),
                     canvas::on_screen(middle, frame.placement, true),
                     scene.verdict == Verdict::pass ? palette::reach : palette::of(scene.verdict), scene.work.look,
                     list);
}

}  // namespace yardwright::panels
