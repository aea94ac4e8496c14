// The program behind the window: one frame of it, drawn and obeyed, whatever the window system.
#pragma once

#include "editor/canvas/answer_cache.hpp"
#include "editor/canvas/canvas.hpp"
#include "editor/canvas/grow_overlay.hpp"
#include "editor/canvas/picture_cache.hpp"
#include "editor/canvas/storm_overlay.hpp"
#include "editor/panels/files_dialog.hpp"
#include "editor/panels/workspace.hpp"
#include "editor/session/answer_desk.hpp"

namespace yardwright::window {

class App {
 public:
  App(session::Session session, const Catalogs& catalogs, look::Look look);

  /// Between ImGui::NewFrame and ImGui::Render.
  void frame();
  /// Whether answers, files or a storm have come in that the last frame did not show.
  bool has_news() const {
    return desk_.answers().revision != answers_.revision || storms_.news() != storm_news_ ||
           rooms_.news() != room_news_ || proposals_.news() != proposal_news_ || mends_.news() != mend_news_ ||
           growth_.record() != grow_shown_.ground || canvas_.pictures.has_news() || files_.reading.is_done();
  }
  /// Whether everything that was asked is back and shown.
  bool is_at_rest() const {
    return desk_.is_at_rest() && growth_.is_at_rest() && !mends_.is_seeking() &&
           canvas_.pictures.being_read().empty() && !has_news();
  }
  /// Where the plan lay in the last frame.
  const canvas::Rect& plan_area() const { return plan_area_; }
  bool wants_to_end() const { return files_.ends; }
  void ask_to_end() { state_.wish = panels::FileWish::quit; }
  const session::Session& session() const { return session_; }

 private:
  void fetch_answers();
  void fetch_growth();
  void fetch_mends();
  void draw_over_plan(const session::View& view, ImDrawList& list);

  session::Session session_;
  const Catalogs& catalogs_;
  canvas::PictureCache pictures_;
  look::Look look_;
  session::AnswerDesk desk_;
  session::StormDesk storms_;
  session::GrowDesk growth_;
  session::RoomDesk rooms_;
  session::ProposalDesk proposals_;
  session::MendDesk mends_;
  int storm_news_ = 0, room_news_ = 0, proposal_news_ = 0, mend_news_ = 0;  ///< those of this frame
  std::shared_ptr<const session::MendRecord> found_mends_;
  canvas::GrowShown grow_shown_;  ///< in this frame
  Answers answers_;               ///< those of this frame
  canvas::Canvas canvas_;
  canvas::Rect plan_area_;
  canvas::AnswerCache kept_answers_;
  canvas::StormOverlay storm_overlay_;
  canvas::GrowOverlay grow_overlay_;
  panels::PanelState state_;
  panels::FilesDialog files_;
};

}  // namespace yardwright::window
