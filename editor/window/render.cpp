#include "editor/window/render.hpp"

#include <backends/imgui_impl_opengl3.h>

#include <SFML/OpenGL.hpp>

namespace yardwright::window {

namespace {

void clear(Colour colour) {
  const ImVec4 c = look::unpacked(colour);
  glClearColor(c.x, c.y, c.z, 1);
  glClear(GL_COLOR_BUFFER_BIT);
}

}  // namespace

void render(const canvas::Rect& plan) {
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  glViewport(0, 0, static_cast<int>(size.x), static_cast<int>(size.y));
  clear(palette::card);
  glEnable(GL_SCISSOR_TEST);
  glScissor(static_cast<int>(plan.low.x), static_cast<int>(size.y - plan.high.y),
            static_cast<int>(plan.high.x - plan.low.x), static_cast<int>(plan.high.y - plan.low.y));
  clear(palette::paper);
  glDisable(GL_SCISSOR_TEST);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

}  // namespace yardwright::window
