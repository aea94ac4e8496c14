// From SFML's events to Dear ImGui's input, and the clipboard between both. After a press the events wait
// until a frame has seen it, so that none is shorter than a frame.
#pragma once

#include <imgui.h>

#include <SFML/Window.hpp>
#include <array>
#include <string>

namespace yardwright::window {

class InputBridge {
 public:
  /// Names the keys and the clipboard to ImGui's current context.
  void attach();
  /// True after a press: draw a frame before taking more.
  bool take(const sf::Event& event);
  /// Hands over size, time and buttons; call before ImGui::NewFrame.
  void begin_frame(const sf::Window& window, float seconds);
  /// ImGui's wish for a pointer shape.
  void set_cursor(sf::Window& window);

 private:
  std::array<bool, 3> is_down_{};
  std::string clipboard_;  ///< the text that ImGui last asked for
  ImGuiMouseCursor shape_ = ImGuiMouseCursor_Arrow;
  sf::Cursor cursor_;
};

}  // namespace yardwright::window
