#include "editor/session/session.hpp"

#include <algorithm>

#include "editor/session/new_ids.hpp"
#include "geom/site/footprint.hpp"
#include "geom/site/picture_fit.hpp"

namespace yardwright::session {

namespace {

constexpr double copy_gap_m = 1.5;  // a copy stands beside its original with room to walk between

/// So far to the east that the copies do not touch the originals.
SiteVector beside(const Site& site, const Selection& selection) {
  std::vector<SitePoint> corners;
  for (const ItemId id : selection) {
    const Item* item = find(site, id);
    if (item == nullptr || as<Spout>(*item) != nullptr) continue;
    const Box box = box_of(extent(item->thing));
    corners.insert(corners.end(), {box.low, box.high});
  }
  const Box all = corners.empty() ? Box{} : box_of(corners);
  return {all.high.x - all.low.x + copy_gap_m, 0};
}

/// The picture that the fit tool holds.
std::optional<Picture> picture_in_hand(const Session& session) {
  const Item* item = session.tool.doing == Doing::fit ? find(session.site(), session.tool.from) : nullptr;
  const Picture* picture = item != nullptr ? as<Picture>(*item) : nullptr;
  return picture != nullptr ? std::optional{*picture} : std::nullopt;
}

/// Points clicked in a picture stay on it while it moves.
void carry_points(Session& session, const Picture& before) {
  const auto after = picture_in_hand(session);
  if (!after) {
    session.tool = {};
    return;
  }
  for (SitePoint& point : session.tool.points) point = carried(point, before, *after);
}

/// What every change of the site has to keep whole.
template <class Change>
void change(Session& session, Change apply_it) {
  const auto before = picture_in_hand(session);
  apply_it();
  session.selection = still_there(session.site(), session.selection);
  session.phase = std::clamp(session.phase, 0, std::max(0, static_cast<int>(session.site().phases.size()) - 1));
  if (before) carry_points(session, *before);
}

void step_tool(Session& session, const ToolStep& step) {
  session.tool = step.tool;
  session.notice = step.notice;
  session.pointed_finding.clear();
  perform(session, step.edits);
  if (!step.selection.empty()) session.selection = step.selection;
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
  change(session, [&] { session.history.add_step(yardwright::apply(session.history.settled(), edits)); });
}

void take_mend(Session& session, const Mend& mend) {
  perform(session, edits_of_whole(session.history.settled(), session.phase, mend.edits));
}

void undo(Session& session) {
  change(session, [&] { session.history.undo(); });
}

void redo(Session& session) {
  change(session, [&] { session.history.redo(); });
}

void click_tool(Session& session, SitePoint at, ItemId on) {
  step_tool(session, clicked(session.tool, session.site(), {at, on, session.phase}));
}

void finish_tool(Session& session) { step_tool(session, finished(session.tool, session.site(), session.phase)); }

void take_tool(Session& session, Tool tool) {
  session.tool = std::move(tool);
  session.notice.clear();
  if (session.tool.doing != Doing::select) select_nothing(session);
}

void remove_selected(Session& session) { perform(session, removed(session.selection)); }

void duplicate_selected(Session& session) {
  const Site& site = session.history.settled();
  const Duplicated copies = duplicated(site, session.selection, beside(site, session.selection), session.phase);
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
  select_nothing(session);
  for (const Item& item : session.site().items) session.selection.push_back(item.id);
}

void select(Session& session, ItemId id, bool adding) {
  session.lot_edge.reset();
  if (!adding) {
    session.selection = id ? Selection{id} : Selection{};
    return;
  }
  if (!id) return;
  const auto found = std::ranges::find(session.selection, id);
  if (found == session.selection.end())
    session.selection.push_back(id);
  else
    session.selection.erase(found);
}

void select_nothing(Session& session) {
  session.selection.clear();
  session.lot_edge.reset();
}

void select_lot_edge(Session& session, int edge) {
  session.selection.clear();
  session.lot_edge = edge;
}

std::optional<int> selected_lot_edge(const Session& session) {
  const bool is_there = session.lot_edge && *session.lot_edge < static_cast<int>(session.site().lot.corners.size());
  return is_there ? session.lot_edge : std::nullopt;
}

const Item* lone_selected(const Session& session) {
  return session.selection.size() == 1 ? find(session.site(), session.selection.front()) : nullptr;
}

std::string title_of(const Session& session) {
  if (!session.site().name.empty()) return session.site().name;
  return session.file ? session.file->stem().string() : "Untitled yard";
}

}  // namespace yardwright::session
