#include "editor/canvas/pointer.hpp"

#include <algorithm>
#include <cmath>

#include "editor/session/lot_edits.hpp"
#include "editor/session/pick.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::canvas {

namespace {

using namespace session;

constexpr double grab_px = 8, pick_px = 6, snap_px = 9, tremble_px = 4, handle_arm_px = 26, least_handled_px = 34;

ScreenPoint mouse() {
  return {static_cast<double>(ImGui::GetIO().MousePos.x), static_cast<double>(ImGui::GetIO().MousePos.y)};
}
double metres(const PointerTarget& target, double px) { return target.look.scale * px / target.view.px_per_m; }
bool may_snap() { return !ImGui::GetIO().KeyAlt; }

Snapped snap(const PointerTarget& target, SitePoint at, Selection but, bool to_lot = true) {
  if (!may_snap() || target.session.tool.doing == Doing::fit) return {at, SnapTo::nothing};
  const Site& site = target.session.history.settled();
  return snapped(site, at,
                 {metres(target, snap_px), grid_step_m(site.units, target.view.px_per_m), std::move(but), to_lot});
}

std::optional<Handle> handle_under(const PointerTarget& target, ScreenPoint at) {
  std::optional<Handle> best;
  double nearest = grab_px * static_cast<double>(target.look.scale);
  for (const Handle& handle : shown_handles(target.session, target.view, target.look)) {
    const double away = distance(to_screen(target.view, handle.at), at);
    if (away < nearest) {
      nearest = away;
      best = handle;
    }
  }
  return best;
}

void begin(Pointer& pointer, const PointerTarget& target, Dragging dragging) {
  pointer.dragging = dragging;
  pointer.has_moved = false;
  pointer.pressed_px = mouse();
  pointer.pressed_at = to_site(target.view, mouse());
}

void press_select(Pointer& pointer, const PointerTarget& target) {
  Session& session = target.session;
  session.notice.clear();
  if (const auto handle = handle_under(target, mouse())) {
    pointer.handle = *handle;
    if (selected_lot_edge(session)) return begin(pointer, target, Dragging::lot_handle);
    pointer.item = session.selection.front();
    return begin(pointer, target, Dragging::handle);
  }
  const bool adding = ImGui::GetIO().KeyShift;
  const ItemId under = pick(session.site(), to_site(target.view, mouse()), metres(target, pick_px));
  const bool was_selected = std::ranges::find(session.selection, under) != session.selection.end();
  const Item* item = find(session.site(), under);
  if (item != nullptr && is_area(item->thing) && !was_selected && !adding) {
    // A pad or a cover lies under much: it is taken by a click, while a drag over it draws a box.
    pointer.item = under;
    select_nothing(session);
    return begin(pointer, target, Dragging::box);
  }
  if (!under || adding || !was_selected) select(session, under, adding);
  const auto edge =
      under ? std::nullopt : pick_lot_edge(session.site().lot, to_site(target.view, mouse()), metres(target, pick_px));
  if (edge && !adding) select_lot_edge(session, *edge);
  pointer.item = under;
  begin(pointer, target, under ? Dragging::items : Dragging::box);
}

void press_tool(Pointer& pointer, const PointerTarget& target) {
  Session& session = target.session;
  const bool ends = ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left) &&
                    (session.tool.doing == Doing::draw || session.tool.doing == Doing::lot);
  if (ends) return finish_tool(session);
  const ItemId under = pick(session.site(), to_site(target.view, mouse()), metres(target, pick_px));
  click_tool(session, pointer.snapped.at, under);
}

void press(Pointer& pointer, const PointerTarget& target) {
  const bool space = ImGui::IsKeyDown(ImGui::GetKeyIndex(ImGuiKey_Space));
  if (ImGui::IsMouseClicked(ImGuiMouseButton_Middle) || ImGui::IsMouseClicked(ImGuiMouseButton_Right)) {
    return begin(pointer, target, Dragging::view);
  }
  if (!ImGui::IsMouseClicked(ImGuiMouseButton_Left)) return;
  if (space) return begin(pointer, target, Dragging::view);
  if (target.session.tool.doing == Doing::select) return press_select(pointer, target);
  press_tool(pointer, target);
}

void drag_items(Pointer& pointer, const PointerTarget& target) {
  Session& session = target.session;
  const Site& site = session.history.settled();
  const Item* grabbed = find(site, pointer.item);
  if (grabbed == nullptr || as<Spout>(*grabbed) != nullptr) return;
  const SitePoint place = place_of(grabbed->thing);
  pointer.snapped = snap(target, place + (to_site(target.view, mouse()) - pointer.pressed_at), session.selection);
  session.history.propose(yardwright::apply(site, moved(site, session.selection, pointer.snapped.at - place)));
}

/// A turn goes by whole degrees, by fifteens with Shift, freely with Alt.
Snapped turn_to(const PointerTarget& target, const Item& item) {
  const SitePoint at = to_site(target.view, mouse());
  if (!may_snap()) return {at, SnapTo::nothing};
  return {turned_in_steps(place_of(item.thing), at, Angle::degrees(ImGui::GetIO().KeyShift ? 15 : 1)), SnapTo::nothing};
}

void drag_handle(Pointer& pointer, const PointerTarget& target) {
  const Site& site = target.session.history.settled();
  const Item* item = find(site, pointer.item);
  if (item == nullptr) return;
  const bool turning = pointer.handle.grip == Grip::turn;
  pointer.snapped = turning ? turn_to(target, *item) : snap(target, to_site(target.view, mouse()), {item->id});
  Item other = *item;
  other.thing = dragged(item->thing, pointer.handle, pointer.snapped.at);
  target.session.history.propose(yardwright::apply(site, PutItem{std::move(other)}));
}

void drag_lot_handle(Pointer& pointer, const PointerTarget& target) {
  const Site& site = target.session.history.settled();
  pointer.snapped = snap(target, to_site(target.view, mouse()), {}, false);
  target.session.history.propose(
      yardwright::apply(site, SetLot{dragged(site.lot, pointer.handle, pointer.snapped.at)}));
}

void drag(Pointer& pointer, const PointerTarget& target) {
  const ImVec2 by = ImGui::GetIO().MouseDelta;
  if (pointer.dragging == Dragging::view) {
    target.view = panned(target.view, {static_cast<double>(by.x), static_cast<double>(by.y)});
    return;
  }
  pointer.has_moved =
      pointer.has_moved || distance(mouse(), pointer.pressed_px) > tremble_px * static_cast<double>(target.look.scale);
  if (!pointer.has_moved) return;
  if (pointer.dragging == Dragging::items) drag_items(pointer, target);
  if (pointer.dragging == Dragging::handle) drag_handle(pointer, target);
  if (pointer.dragging == Dragging::lot_handle) drag_lot_handle(pointer, target);
}

void release(Pointer& pointer, const PointerTarget& target) {
  Session& session = target.session;
  if (pointer.dragging == Dragging::box && pointer.has_moved) {
    const Selection caught = inside(session.site(), box_of({pointer.pressed_at, to_site(target.view, mouse())}));
    for (const ItemId id : caught) {
      if (std::ranges::find(session.selection, id) == session.selection.end()) session.selection.push_back(id);
    }
  }
  if (pointer.dragging == Dragging::box && !pointer.has_moved && pointer.item) select(session, pointer.item);
  session.history.keep_proposal();
  pointer.dragging = Dragging::nothing;
}

/// A thing that is small on the screen is moved, not sized: its handles would cover all of it.
bool has_room_for_handles(const Item& item, const View& view, const look::Look& look) {
  const Box box = box_of(extent(item.thing));
  const double shorter_m = std::min(box.high.x - box.low.x, box.high.y - box.low.y);
  return shorter_m * view.px_per_m >= static_cast<double>(look.px(least_handled_px));
}

bool any_button_down() {
  const ImGuiIO& io = ImGui::GetIO();
  return io.MouseDown[0] || io.MouseDown[1] || io.MouseDown[2];
}

}  // namespace

std::vector<Handle> shown_handles(const Session& session, const View& view, const look::Look& look) {
  if (session.tool.doing != Doing::select) return {};
  if (selected_lot_edge(session)) return lot_handles(session.site().lot);
  const Item* item = lone_selected(session);
  if (item == nullptr) return {};
  auto handles = handles_of(item->thing, static_cast<double>(look.px(handle_arm_px)) / view.px_per_m);
  if (path_of(item->thing) == nullptr && !has_room_for_handles(*item, view, look))
    std::erase_if(handles, [](const Handle& handle) { return handle.grip != Grip::turn; });
  return handles;
}

void point(Pointer& pointer, const PointerTarget& target, bool hovered) {
  pointer.over_plan = hovered;
  if (hovered && ImGui::GetIO().MouseWheel != 0) {
    target.view = zoomed(target.view, mouse(), std::pow(1.2, static_cast<double>(ImGui::GetIO().MouseWheel)));
  }
  if (pointer.dragging == Dragging::nothing) {
    if (!hovered) return;
    pointer.snapped = snap(target, to_site(target.view, mouse()), {});
    return press(pointer, target);
  }
  if (!any_button_down()) return release(pointer, target);
  drag(pointer, target);
}

void drop_drag(Pointer& pointer, Session& session) {
  session.history.drop_proposal();
  pointer.dragging = Dragging::nothing;
}

}  // namespace yardwright::canvas
