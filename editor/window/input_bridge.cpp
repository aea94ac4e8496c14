#include "editor/window/input_bridge.hpp"

#include <SFML/Window/Clipboard.hpp>
#include <string>

namespace yardwright::window {

namespace {

struct KeyPair {
  ImGuiKey_ gui;
  sf::Keyboard::Key key;
};

constexpr KeyPair keys[] = {{ImGuiKey_Tab, sf::Keyboard::Tab},
                            {ImGuiKey_LeftArrow, sf::Keyboard::Left},
                            {ImGuiKey_RightArrow, sf::Keyboard::Right},
                            {ImGuiKey_UpArrow, sf::Keyboard::Up},
                            {ImGuiKey_DownArrow, sf::Keyboard::Down},
                            {ImGuiKey_PageUp, sf::Keyboard::PageUp},
                            {ImGuiKey_PageDown, sf::Keyboard::PageDown},
                            {ImGuiKey_Home, sf::Keyboard::Home},
                            {ImGuiKey_End, sf::Keyboard::End},
                            {ImGuiKey_Insert, sf::Keyboard::Insert},
                            {ImGuiKey_Delete, sf::Keyboard::Delete},
                            {ImGuiKey_Backspace, sf::Keyboard::Backspace},
                            {ImGuiKey_Space, sf::Keyboard::Space},
                            {ImGuiKey_Enter, sf::Keyboard::Enter},
                            {ImGuiKey_Escape, sf::Keyboard::Escape},
                            {ImGuiKey_A, sf::Keyboard::A},
                            {ImGuiKey_C, sf::Keyboard::C},
                            {ImGuiKey_V, sf::Keyboard::V},
                            {ImGuiKey_X, sf::Keyboard::X},
                            {ImGuiKey_Y, sf::Keyboard::Y},
                            {ImGuiKey_Z, sf::Keyboard::Z}};

const char* clipboard_text(void* kept) {
  std::string& text = *static_cast<std::string*>(kept);
  const auto utf8 = sf::Clipboard::getString().toUtf8();
  text.assign(utf8.begin(), utf8.end());
  return text.c_str();
}

void set_clipboard_text(void*, const char* text) {
  const std::string typed{text};
  sf::Clipboard::setString(sf::String::fromUtf8(typed.begin(), typed.end()));
}

void take_key(const sf::Event::KeyEvent& event, bool down) {
  ImGuiIO& io = ImGui::GetIO();
  if (event.code >= 0 && event.code < sf::Keyboard::KeyCount) io.KeysDown[event.code] = down;
  io.KeyCtrl = event.control;
  io.KeyShift = event.shift;
  io.KeyAlt = event.alt;
}

/// Letters wait in ImGui's queue, so that fast typing needs no frame for each.
bool is_letter_of_text(const sf::Event::KeyEvent& event) {
  const bool letter = event.code >= sf::Keyboard::A && event.code <= sf::Keyboard::Num9;
  return letter && !event.control && !event.alt && ImGui::GetIO().WantTextInput;
}

sf::Cursor::Type cursor_type(ImGuiMouseCursor shape) {
  switch (shape) {
    case ImGuiMouseCursor_TextInput: return sf::Cursor::Text;
    case ImGuiMouseCursor_Hand: return sf::Cursor::Hand;
    case ImGuiMouseCursor_ResizeAll: return sf::Cursor::SizeAll;
    case ImGuiMouseCursor_ResizeNS: return sf::Cursor::SizeVertical;
    default: return sf::Cursor::Arrow;
  }
}

}  // namespace

void InputBridge::attach() {
  ImGuiIO& io = ImGui::GetIO();
  io.BackendPlatformName = "yardwright";
  io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
  for (const KeyPair& pair : keys) io.KeyMap[pair.gui] = pair.key;
  io.ClipboardUserData = &clipboard_;
  io.GetClipboardTextFn = clipboard_text;
  io.SetClipboardTextFn = set_clipboard_text;
}

bool InputBridge::take(const sf::Event& event) {
  ImGuiIO& io = ImGui::GetIO();
  switch (event.type) {
    case sf::Event::MouseMoved:
      io.MousePos = {static_cast<float>(event.mouseMove.x), static_cast<float>(event.mouseMove.y)};
      break;
    case sf::Event::MouseButtonPressed:
    case sf::Event::MouseButtonReleased:
      io.MousePos = {static_cast<float>(event.mouseButton.x), static_cast<float>(event.mouseButton.y)};
      if (event.mouseButton.button > sf::Mouse::Middle) break;
      is_down_[static_cast<std::size_t>(event.mouseButton.button)] = event.type == sf::Event::MouseButtonPressed;
      break;
    case sf::Event::MouseWheelScrolled:
      (event.mouseWheelScroll.wheel == sf::Mouse::VerticalWheel ? io.MouseWheel : io.MouseWheelH) +=
          event.mouseWheelScroll.delta;
      break;
    case sf::Event::KeyPressed: take_key(event.key, true); break;
    case sf::Event::KeyReleased: take_key(event.key, false); break;
    case sf::Event::TextEntered:
      if (event.text.unicode >= 32 && event.text.unicode != 127) io.AddInputCharacter(event.text.unicode);
      break;
    case sf::Event::LostFocus:
      io.AddFocusEvent(false);
      is_down_ = {};
      break;
    default: break;
  }
  return (event.type == sf::Event::KeyPressed && !is_letter_of_text(event.key)) ||
         event.type == sf::Event::MouseButtonPressed;
}

void InputBridge::begin_frame(const sf::Window& window, float seconds) {
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = {static_cast<float>(window.getSize().x), static_cast<float>(window.getSize().y)};
  io.DeltaTime = seconds > 0 ? seconds : 1.0F / 60.0F;
  for (std::size_t button = 0; button < is_down_.size(); ++button) {
    io.MouseDown[button] = is_down_[button];
  }
}

void InputBridge::set_cursor(sf::Window& window) {
  const ImGuiMouseCursor wanted = ImGui::GetMouseCursor();
  if (wanted == shape_) return;
  shape_ = wanted;
  if (cursor_.loadFromSystem(cursor_type(wanted))) window.setMouseCursor(cursor_);
}

}  // namespace yardwright::window
