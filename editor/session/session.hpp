// What the window works on: the site with its history, what is selected, the tool in hand, the file, and what is
// being asked. No window library; the canvas and the panels read it and call the functions below.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>

#include "editor/session/brought_copy.hpp"
#include "editor/session/history.hpp"
#include "editor/session/selection_edits.hpp"
#include "editor/session/tool.hpp"
#include "editor/session/view.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::session {

struct Session {
  History history;
  Site saved;  ///< as it is in the file
  std::optional<std::filesystem::path> file;
  Selection selection;
  std::optional<int> lot_edge;  ///< the edge of the lot that is selected, by its first corner
  Tool tool;
  Question question = Question::reach;
  int phase = 0;                                      ///< the questions are asked as of this phase
  std::string notice;                                 ///< the last thing to tell, one sentence
  std::optional<Box> look_at;                         ///< a place to bring into view, until the canvas has done so
  std::vector<std::shared_ptr<BroughtCopy>> brought;  ///< copied beside the file, and not saved with it yet
  std::string pointed_finding;                        ///< id of the finding under the pointer or last shown

  const Site& site() const { return history.shown(); }
  bool is_changed() const { return !(history.settled() == saved); }
};

/// A session with a site just opened (with its file) or begun (without).
Session session_of(Site site, std::optional<std::filesystem::path> file = std::nullopt);

/// One undoable step.
void perform(Session& session, const Edits& edits);
/// A mend of a finding, which was found in the yard as of the phase that is shown.
void take_mend(Session& session, const Mend& mend);
void undo(Session& session);
void redo(Session& session);

/// A click with the tool in hand, and its end (Enter or a double-click). What is new is built in the phase that is shown.
void click_tool(Session& session, SitePoint at, ItemId on);
void finish_tool(Session& session);
void take_tool(Session& session, Tool tool);
void remove_selected(Session& session);
void duplicate_selected(Session& session);
void nudge_selected(Session& session, SiteVector by);
void turn_selected(Session& session, Angle clockwise);
void select_everything(Session& session);
/// Selects, or takes out of the selection again where `adding` and it was in.
void select(Session& session, ItemId id, bool adding = false);

/// Nothing is selected, neither an item nor an edge of the lot.
void select_nothing(Session& session);
void select_lot_edge(Session& session, int edge);
/// The selected edge where the lot still has it.
std::optional<int> selected_lot_edge(const Session& session);

/// The one selected item, or null.
const Item* lone_selected(const Session& session);

/// "Cotter Lane yard", or the file's name where the yard has none.
std::string title_of(const Session& session);

}  // namespace yardwright::session
