#include "editor/window/keyboard.hpp"

#include <SFML/Window/Keyboard.hpp>

#include "editor/session/snap.hpp"

namespace yardwright::window {

namespace {

bool hit(sf::Keyboard::Key key, bool repeats = false) { return ImGui::IsKeyPressed(key, repeats); }

void obey_control(const panels::Workspace& work) {
  session::Session& session = work.session;
  const bool shift = ImGui::GetIO().KeyShift;
  if (hit(sf::Keyboard::Z, true)) shift ? redo(session) : undo(session);
  if (hit(sf::Keyboard::Y, true)) redo(session);
  if (hit(sf::Keyboard::D)) duplicate_selected(session);
  if (hit(sf::Keyboard::A)) select_everything(session);
  if (hit(sf::Keyboard::S)) work.state.wish = shift ? panels::FileWish::save_as : panels::FileWish::save;
  if (hit(sf::Keyboard::O)) work.state.wish = panels::FileWish::open;
  if (hit(sf::Keyboard::N)) work.state.wish = panels::FileWish::new_yard;
}

/// One step of the grid; ten with Shift.
void nudge(const panels::Workspace& work, const canvas::Canvas& canvas) {
  const double step_m = session::grid_step_m(work.units(), canvas.view.px_per_m) * (ImGui::GetIO().KeyShift ? 10 : 1);
  SiteVector by;
  if (hit(sf::Keyboard::Left, true)) by.x -= step_m;
  if (hit(sf::Keyboard::Right, true)) by.x += step_m;
  if (hit(sf::Keyboard::Up, true)) by.y += step_m;
  if (hit(sf::Keyboard::Down, true)) by.y -= step_m;
  if (by.x != 0 || by.y != 0) nudge_selected(work.session, by);
}

void escape(session::Session& session, canvas::Canvas& canvas) {
  if (canvas.pointer.dragging != canvas::Dragging::nothing) return drop_drag(canvas.pointer, session);
  if (session.tool.doing != session::Doing::select)
    session.tool = cancelled(session.tool);
  else
    select_nothing(session);
  session.notice.clear();
}

}  // namespace

void obey_keys(const panels::Workspace& work, canvas::Canvas& canvas) {
  const ImGuiIO& io = ImGui::GetIO();
  if (io.WantTextInput || ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopup)) return;
  session::Session& session = work.session;
  if (io.KeyCtrl) return obey_control(work);
  if (hit(sf::Keyboard::Escape)) escape(session, canvas);
  if (hit(sf::Keyboard::Enter)) finish_tool(session);
  if (hit(sf::Keyboard::Delete) || hit(sf::Keyboard::Backspace)) remove_selected(session);
  if (hit(sf::Keyboard::F)) session.look_at = session::bounds_of(session.site());
  nudge(work, canvas);
}

}  // namespace yardwright::window
