// What the pointer does on the plan: it pans and zooms the view, selects, moves and resizes, and hands clicks to the
// tool. A drag proposes a site each frame and becomes one step when it ends.
#pragma once

#include <optional>

#include "editor/canvas/look.hpp"
#include "editor/session/handles.hpp"
#include "editor/session/session.hpp"
#include "editor/session/snap.hpp"

namespace yardwright::canvas {

enum class Dragging : std::uint8_t { nothing, view, items, handle, lot_handle, box };

struct Pointer {
  Dragging dragging = Dragging::nothing;
  bool has_moved = false;  ///< farther than a trembling hand
  ScreenPoint pressed_px;
  SitePoint pressed_at;
  session::Handle handle;
  ItemId item;               ///< that was grabbed
  session::Snapped snapped;  ///< where the pointer is drawn to now
  bool over_plan = false;
};

struct PointerTarget {
  session::Session& session;
  session::View& view;
  const look::Look& look;
};

/// Once a frame; `hovered` is whether the pointer is over the plan and over nothing else.
void point(Pointer& pointer, const PointerTarget& target, bool hovered);

/// Escape while something is dragged: it goes back to where it was.
void drop_drag(Pointer& pointer, session::Session& session);

/// The handles of the lone selected item, or of the lot where an edge of it is selected, as they are drawn and grabbed.
std::vector<session::Handle> shown_handles(const session::Session& session, const session::View& view,
                                           const look::Look& look);

}  // namespace yardwright::canvas
