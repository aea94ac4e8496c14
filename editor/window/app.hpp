// The program behind the window: one frame of it, drawn and obeyed, whatever the window system.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/picture_cache.hpp"
#include "editor/panels/files_dialog.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::window {

class App {
 public:
  App(session::Session session, const Catalogs& catalogs, look::Look look);

  /// Between ImGui::NewFrame and ImGui::Render.
  void frame();
  bool wants_to_end() const { return files_.ends; }
  void ask_to_end() { state_.wish = panels::FileWish::quit; }
  const session::Session& session() const { return session_; }

 private:
  const Answers& answers();

  session::Session session_;
  const Catalogs& catalogs_;
  canvas::PictureCache pictures_;
  look::Look look_;
  LiveCheck check_;
  canvas::Canvas canvas_;
  panels::PanelState state_;
  panels::FilesDialog files_;
};

}  // namespace yardwright::window
