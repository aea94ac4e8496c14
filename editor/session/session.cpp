#include "editor/session/session.hpp"

#include <algorithm>

#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

constexpr double copy_gap_m = 1.5;  // a copy stands beside its original with room to walk between

/// So far to the east that the copies do not touch the originals.
SiteVector beside(const Site& site, const Selection& selection) {
  double width_m = 0;
  for (const ItemId id : selection) {
    const Item* item = find(site, id);
    if (item == nullptr || as<Spout>(*item) != nullptr) continue;
    const Box box = box_of(extent(item->thing));
    width_m = std::max(width_m, box.high.x - box.low.x);
  }
  return {width_m + copy_gap_m, 0};
}

}  // namespace

Session session_of(Site site, std::optional<std::filesystem::path> file) {
  Session session;
  session.phase = std::max(0, static_cast<int>(site.phases.size()) - 1);
  session.look_at = bounds_of(site);
  session.saved = site;
  session.history = History{std::move(site)};
  session.file = std::move(file);
  return session;
}

void perform(Session& session, const Edits& edits) {
  if (edits.empty()) return;
  session.history.add_step(yardwright::apply(session.history.settled(), edits));
  session.selection = still_there(session.site(), session.selection);
}

void undo(Session& session) {
  session.history.undo();
  session.selection = still_there(session.site(), session.selection);
}

void redo(Session& session) {
  session.history.redo();
  session.selection = still_there(session.site(), session.selection);
}

void step_tool(Session& session, const ToolStep& step) {
  session.tool = step.tool;
  session.notice = step.notice;
  perform(session, step.edits);
  if (!step.selection.empty()) session.selection = step.selection;
}

void take_tool(Session& session, Tool tool) {
  session.tool = std::move(tool);
  session.notice.clear();
  if (session.tool.doing != Doing::select) session.selection.clear();
}

void remove_selected(Session& session) { perform(session, removed(session.selection)); }

void duplicate_selected(Session& session) {
  const Site& site = session.history.settled();
  const Duplicated copies = duplicated(site, session.selection, beside(site, session.selection));
  perform(session, copies.edits);
  if (!copies.copies.empty()) session.selection = copies.copies;
}

void nudge_selected(Session& session, SiteVector by) {
  perform(session, moved(session.history.settled(), session.selection, by));
}

void turn_selected(Session& session, Angle clockwise) {
  perform(session, turned(session.history.settled(), session.selection, clockwise));
}

void select_everything(Session& session) {
  session.selection.clear();
  for (const Item& item : session.site().items) session.selection.push_back(item.id);
}

void select(Session& session, ItemId id, bool adding) {
  if (!adding) {
    session.selection = id ? Selection{id} : Selection{};
    return;
  }
  if (!id) return;
  const auto found = std::ranges::find(session.selection, id);
  if (found == session.selection.end()) session.selection.push_back(id);
  else session.selection.erase(found);
}

const Item* lone_selected(const Session& session) {
  return session.selection.size() == 1 ? find(session.site(), session.selection.front()) : nullptr;
}

std::string title_of(const Session& session) {
  if (!session.site().name.empty()) return session.site().name;
  return session.file ? session.file->stem().string() : "Untitled yard";
}

}  // namespace yardwright::session
