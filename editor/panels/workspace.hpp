// What every panel is handed: the session that it changes, the answers that it shows, and the look.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "editor/canvas/look.hpp"
#include "editor/panels/section_cache.hpp"
#include "editor/session/mend_desk.hpp"
#include "editor/session/proposal_desk.hpp"
#include "editor/session/room_desk.hpp"
#include "editor/session/session.hpp"
#include "editor/session/storm_desk.hpp"
#include "geom/check/check.hpp"
#include "geom/drain/storm/storm_curves.hpp"

namespace yardwright::panels {

/// The one text field that is being typed in, since ImGui keeps none of it, and what was wrong with the last text.
struct Typing {
  ImGuiID field = 0;
  std::string text;
  std::string refused_key;       ///< the row whose text was not taken
  std::string problem;           ///< in a sentence
  std::uint64_t refused_at = 0;  ///< the revision of the site then: any change of it answers the problem
};

/// What was asked of the file menu, for the files dialog to do.
enum class FileWish : std::uint8_t { nothing, new_yard, open, save, save_as, picture, ground, rain, plan_set, quit };

struct PanelState {
  Typing typing;
  std::string explained_finding;  ///< whose "why" is open
  bool shows_yard = false;        ///< the yard's own card in the place of the question's
  drain::storm::StormOptions storm_options;
  bool shows_storm = true;                                 ///< its water on the plan
  double storm_time_s = 0;                                 ///< the moment that is shown of it
  std::shared_ptr<const session::StormRecord> storm_seen;  ///< the one that the moment is of
  drain::storm::CurvesOf storm_curves = drain::storm::CurvesOf::pit_depths;
  std::optional<Thing> sought;                                     ///< what Grow seeks room for, where it was chosen
  std::optional<session::ProposalAsk> proposal_ask;                ///< where the usual one was changed
  std::shared_ptr<const session::ProposalRecord> proposals_shown;  ///< those that the number below is of
  std::optional<std::size_t> proposal;                             ///< the one drawn on the plan
  SectionCache section;
  FileWish wish = FileWish::nothing;
  std::filesystem::path wished_file;  ///< to open, where it was chosen from the recent ones
};

struct Workspace {
  session::Session& session;
  const Answers& answers;
  const Catalogs& catalogs;
  const look::Look& look;
  PanelState& state;
  session::StormDesk& storms;
  const session::GrowDesk& growth;
  session::RoomDesk& rooms;
  session::ProposalDesk& proposals;
  const session::MendDesk& mends;
  std::shared_ptr<const session::MendRecord> found_mends;  ///< of the yard as it is; null where there are none yet

  UnitSystem units() const { return session.site().units; }
};

}  // namespace yardwright::panels
