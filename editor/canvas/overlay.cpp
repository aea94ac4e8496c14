#include "editor/canvas/overlay.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/canvas/device.hpp"
#include "editor/session/lot_edits.hpp"
#include "editor/session/pick.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::canvas {

namespace {

using look::packed;
using session::Doing;

void words(const OverlayInput& input, ImDrawList& list, ImVec2 at, const std::string& text, Colour colour,
           Anchor anchor, double size_px = 12) {
  TextMark mark;
  mark.text = text;
  mark.colour = colour;
  mark.anchor = anchor;
  mark.halo = palette::paper;
  draw_words(mark, at, input.look.px(size_px), input.look, list);
}

void outline(const OverlayInput& input, const Item& item, ImDrawList& list) {
  const ImU32 colour = packed(palette::reach);
  const float width = input.look.px(1.6);
  std::vector<ImVec2> points;
  if (const Spout* spout = as<Spout>(item)) {
    if (const auto ends = session::spout_line(input.session.site(), *spout)) {
      list.AddLine(on_screen(input.view, ends->first), on_screen(input.view, ends->second),
                   packed(palette::reach.faded(0.35)), width * 4);
    }
    return;
  }
  const SitePath* path = path_of(item.thing);
  if (path != nullptr && path->size() < 2) return;
  for (const SitePoint corner : as_polygon(extent(item.thing), 72).outer)
    points.push_back(on_screen(input.view, corner));
  list.AddPolyline(points.data(), static_cast<int>(points.size()), colour, ImDrawFlags_Closed, width);
}

void handle_mark(const OverlayInput& input, const session::Handle& handle, ImDrawList& list) {
  const ImVec2 at = on_screen(input.view, handle.at);
  const float r = input.look.px(handle.grip == session::Grip::new_corner ? 2.5 : 4);
  const ImU32 edge = packed(palette::reach), inside = packed(palette::white);
  if (handle.grip == session::Grip::turn || handle.grip == session::Grip::new_corner) {
    list.AddCircleFilled(at, r, inside);
    list.AddCircle(at, r, edge, 0, input.look.px(1.4));
    return;
  }
  list.AddRectFilled({at.x - r, at.y - r}, {at.x + r, at.y + r}, inside);
  list.AddRect({at.x - r, at.y - r}, {at.x + r, at.y + r}, edge, 0, 0, input.look.px(1.4));
}

void draw_box(const OverlayInput& input, ImDrawList& list) {
  if (input.pointer.dragging != Dragging::box || !input.pointer.has_moved) return;
  const ImVec2 from = on_screen(input.view, input.pointer.pressed_at), to = ImGui::GetIO().MousePos;
  const ImVec2 low{std::min(from.x, to.x), std::min(from.y, to.y)},
      high{std::max(from.x, to.x), std::max(from.y, to.y)};
  list.AddRectFilled(low, high, packed(palette::reach.faded(0.08)));
  list.AddRect(low, high, packed(palette::reach), 0, 0, input.look.px(1));
}

void draw_snap(const OverlayInput& input, ImDrawList& list) {
  using session::SnapTo;
  const auto& snapped = input.pointer.snapped;
  if (!input.pointer.over_plan || snapped.to == SnapTo::nothing || snapped.to == SnapTo::grid) return;
  const ImVec2 at = on_screen(input.view, snapped.at);
  list.AddCircle(at, input.look.px(6), packed(palette::reach), 0, input.look.px(1.4));
}

/// The thing that a click would put, as its outline.
void draw_ghost(const OverlayInput& input, ImDrawList& list) {
  const auto& tool = input.session.tool;
  if (tool.doing != Doing::place || !input.pointer.over_plan) return;
  const SitePoint at = input.pointer.snapped.at;
  const Thing thing = moved(*tool.thing, at - place_of(*tool.thing));
  std::vector<ImVec2> points;
  for (const SitePoint corner : as_polygon(extent(thing), 72).outer) points.push_back(on_screen(input.view, corner));
  list.AddPolyline(points.data(), static_cast<int>(points.size()), packed(palette::reach), ImDrawFlags_Closed,
                   input.look.px(1.6));
  list.AddCircleFilled(on_screen(input.view, at), input.look.px(2.5), packed(palette::reach));
}

/// The length of the line's last piece, at its middle.
void draw_length(const OverlayInput& input, SitePoint from, SitePoint to, ImDrawList& list) {
  const double length_m = distance(from, to);
  if (length_m * input.view.px_per_m < static_cast<double>(input.look.px(40))) return;
  words(input, list, on_screen(input.view, between(from, to, 0.5)),
        text_of(length_m, Quantity::length, input.session.site().units), palette::ink, Anchor::middle);
}

/// A and B, as the fit card calls them.
void name_points(const OverlayInput& input, const SitePath& points, ImDrawList& list) {
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ImVec2 at = on_screen(input.view, points[i]);
    words(input, list, {at.x, at.y - input.look.px(14)}, i == 0 ? "A" : "B", palette::reach, Anchor::middle, 14);
  }
}

void draw_rubber(const OverlayInput& input, ImDrawList& list) {
  const auto& tool = input.session.tool;
  if (tool.points.empty()) return;
  SitePath line = tool.points;
  const bool done = (tool.doing == Doing::measure || tool.doing == Doing::fit) && line.size() == 2;
  if (!done && input.pointer.over_plan) line.push_back(input.pointer.snapped.at);
  std::vector<ImVec2> points;
  for (const SitePoint point : line) points.push_back(on_screen(input.view, point));
  list.AddPolyline(points.data(), static_cast<int>(points.size()), packed(palette::reach), ImDrawFlags_None,
                   input.look.px(2));
  for (const ImVec2 at : points) list.AddCircleFilled(at, input.look.px(3.2), packed(palette::reach));
  if (tool.doing == Doing::fit) name_points(input, tool.points, list);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) draw_length(input, line[i], line[i + 1], list);
}

}  // namespace

ImVec2 on_screen(const session::View& view, SitePoint point) {
  const ScreenPoint at = to_screen(view, point);
  return {static_cast<float>(at.x), static_cast<float>(at.y)};
}

void draw_selection(const OverlayInput& input, ImDrawList& list) {
  if (const auto edge = session::selected_lot_edge(input.session)) {
    const auto [from, to] = session::lot_edge(input.session.site().lot, *edge);
    list.AddLine(on_screen(input.view, from), on_screen(input.view, to), packed(palette::reach), input.look.px(3));
  }
  for (const ItemId id : input.session.selection) {
    if (const Item* item = find(input.session.site(), id)) outline(input, *item, list);
  }
  for (const auto& handle : shown_handles(input.session, input.view, input.look)) handle_mark(input, handle, list);
  draw_box(input, list);
}

void draw_tool(const OverlayInput& input, ImDrawList& list) {
  draw_ghost(input, list);
  draw_rubber(input, list);
  draw_snap(input, list);
}

void draw_scale_bar(const OverlayInput& input, ImDrawList& list) {
  const UnitSystem units = input.session.site().units;
  const double metres_per_unit = shown_unit(Quantity::length, units).factor;
  const double part_m =
      session::round_up_to_step(static_cast<double>(input.look.px(50)) / input.view.px_per_m / metres_per_unit) *
      metres_per_unit;
  const auto part_px = static_cast<float>(part_m * input.view.px_per_m);
  const ImVec2 at{static_cast<float>(input.view.top_left.x) + input.look.px(20),
                  static_cast<float>(input.view.top_left.y + input.view.height_px) - input.look.px(34)};
  const float height = input.look.px(6);
  const ImU32 ink = packed(palette::ink);
  list.AddRectFilled({at.x - input.look.px(8), at.y - input.look.px(6)},
                     {at.x + 2 * part_px + input.look.px(26), at.y + input.look.px(25)},
                     packed(palette::paper.faded(0.85)), input.look.px(6));
  list.AddRectFilled(at, {at.x + part_px, at.y + height}, ink);
  list.AddRectFilled({at.x + part_px, at.y}, {at.x + 2 * part_px, at.y + height}, packed(palette::white));
  list.AddRect(at, {at.x + 2 * part_px, at.y + height}, ink, 0, 0, input.look.px(1));
  for (const int i : {0, 1, 2}) {
    const double value = i * part_m / metres_per_unit;
    const std::string text =
        i == 2 ? fmt::format("{:g} {}", value, shown_unit(Quantity::length, units).suffix) : fmt::format("{:g}", value);
    words(input, list, {at.x + static_cast<float>(i) * part_px, at.y + input.look.px(17)}, text, palette::quiet_ink,
          Anchor::middle);
  }
}

void draw_north_arrow(const OverlayInput& input, ImDrawList& list) {
  const ImVec2 tip{static_cast<float>(input.view.top_left.x + input.view.width_px) - input.look.px(34),
                   static_cast<float>(input.view.top_left.y) + input.look.px(30)};
  const float head = input.look.px(6), tail = input.look.px(36), width = input.look.px(1.8);
  const ImU32 ink = packed(palette::ink);
  list.AddLine(tip, {tip.x, tip.y + tail}, ink, width);
  list.AddLine(tip, {tip.x - head, tip.y + head * 1.7F}, ink, width);
  list.AddLine(tip, {tip.x + head, tip.y + head * 1.7F}, ink, width);
  TextMark north;
  north.text = "N";
  north.bold = true;
  north.colour = palette::ink;
  north.anchor = Anchor::middle;
  north.halo = palette::none;
  draw_words(north, {tip.x, tip.y - input.look.px(10)}, input.look.px(13), input.look, list);
}

}  // namespace yardwright::canvas
