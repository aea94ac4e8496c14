#include "tests/editor/canvas/hand.hpp"

namespace yardwright::tests {

Hand::Hand(Site site) : session{session::session_of(std::move(site))} {
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.DisplaySize = {1000, 600};
  io.DeltaTime = 0.5F;  // two clicks are never a double-click
  unsigned char* pixels = nullptr;
  int width = 0, height = 0;
  io.Fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
  view.centre = {50, 50};
  frame();
}

Hand::~Hand() { ImGui::DestroyContext(); }

void Hand::frame() {
  ImGui::NewFrame();
  canvas::point(pointer, {session, view, look}, true);
  ImGui::EndFrame();
}

void Hand::move(SitePoint at) {
  const ScreenPoint on_screen = session::to_screen(view, at);
  ImGui::GetIO().MousePos = {static_cast<float>(on_screen.x), static_cast<float>(on_screen.y)};
  frame();
}

void Hand::press() {
  ImGui::GetIO().MouseDown[0] = true;
  frame();
}

void Hand::release() {
  ImGui::GetIO().MouseDown[0] = false;
  frame();
}

void Hand::click(SitePoint at) {
  move(at);
  press();
  release();
}

void Hand::drag(SitePoint from, SitePoint to) {
  move(from);
  press();
  move(between(from, to, 0.5));
  move(to);
  release();
}

void Hand::wheel(SitePoint at, float steps) {
  move(at);
  ImGui::GetIO().MouseWheel = steps;
  frame();
}

void Hand::hold_shift(bool held) { ImGui::GetIO().KeyShift = held; }
void Hand::hold_alt(bool held) { ImGui::GetIO().KeyAlt = held; }

}  // namespace yardwright::tests
