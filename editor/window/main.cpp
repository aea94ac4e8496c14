// yardwright-editor [FILE]: the window. With --screenshot it draws a few frames, writes the picture and ends.
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <CLI/CLI.hpp>
#include <SFML/Graphics/Image.hpp>
#include <SFML/Graphics/Texture.hpp>
#include <SFML/OpenGL.hpp>
#include <SFML/Window.hpp>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <tuple>

#include "editor/session/files.hpp"
#include "editor/window/app.hpp"
#include "editor/window/input_bridge.hpp"
#include "editor/window/render.hpp"
#include "geom/check/keep_memory.hpp"
#include "geom/io/catalogs.hpp"

namespace yardwright::window {

namespace {

struct Arguments {
  std::string file, screenshot, size = "1400x900", question;
};

/// How many frames are drawn after the last event: ImGui settles hovers and layouts within them.
constexpr int frames_after_event = 4;
constexpr int frames_after_news = 2;     // a panel knows how long its new words are a frame later
constexpr float typing_frame_s = 0.25F;  // the caret blinks
constexpr int screenshot_frames = 8;
constexpr float autosave_every_s = 15;
constexpr double metres_per_foot = 0.3048;

sf::VideoMode mode_of(const Arguments& arguments) {
  unsigned width = 1400, height = 900;
  std::sscanf(arguments.size.c_str(), "%ux%u", &width, &height);
  if (!arguments.screenshot.empty()) return {width, height};
  const sf::VideoMode desktop = sf::VideoMode::getDesktopMode();
  return {std::min(std::max(width, desktop.width * 9 / 10), desktop.width),
          std::min(std::max(height, desktop.height * 9 / 10), desktop.height)};
}

bool save_screenshot(const sf::Window& window, const std::string& path) {
  const sf::Vector2u size = window.getSize();
  std::vector<sf::Uint8> pixels(std::size_t{4} * size.x * size.y);
  glReadPixels(0, 0, static_cast<int>(size.x), static_cast<int>(size.y), GL_RGBA, GL_UNSIGNED_BYTE, pixels.data());
  for (std::size_t i = 3; i < pixels.size(); i += 4) pixels[i] = 255;
  sf::Image image;
  image.create(size.x, size.y, pixels.data());
  image.flipVertically();
  return image.saveToFile(path);
}

/// Draws when something has happened and rests otherwise.
class Loop {
 public:
  Loop(sf::Window& window, App& app, InputBridge& input) : window_{window}, app_{app}, input_{input} {}

  void run(const std::string& screenshot) {
    for (int frames = 0; !app_.wants_to_end(); ++frames) {
      take_events();
      keep_unsaved();
      if (app_.has_news()) left_ = std::max(left_, frames_after_news);
      if (left_ <= 0 && !is_typing_due()) {
        sf::sleep(sf::milliseconds(8));
        continue;
      }
      draw();
      if (!screenshot.empty() && frames >= screenshot_frames && app_.is_at_rest()) {
        save_screenshot(window_, screenshot);
        return;
      }
      if (!screenshot.empty()) left_ = frames_after_event;
      window_.display();
    }
  }

 private:
  bool is_typing_due() const {
    return ImGui::GetIO().WantTextInput && clock_.getElapsedTime().asSeconds() > typing_frame_s;
  }

  /// An autosave that fails must not stop the work; the next one tries again.
  void keep_unsaved() {
    if (since_autosave_.getElapsedTime().asSeconds() < autosave_every_s || kept_ == app_.session().history.revision())
      return;
    since_autosave_.restart();
    kept_ = app_.session().history.revision();
    std::ignore = session::autosave(app_.session(), session::state_folder());
  }

  void take_events() {
    sf::Event event;
    while (window_.pollEvent(event)) {
      left_ = frames_after_event;
      if (event.type == sf::Event::Closed) app_.ask_to_end();
      if (input_.take(event)) return;
    }
  }

  void draw() {
    --left_;
    input_.begin_frame(window_, clock_.restart().asSeconds());
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    app_.frame();
    input_.set_cursor(window_);
    ImGui::Render();
    render(app_.plan_area());
  }

  sf::Window& window_;
  App& app_;
  InputBridge& input_;
  sf::Clock clock_, since_autosave_;
  std::uint64_t kept_ = 0;  ///< the revision that was autosaved last
  int left_ = frames_after_event;
};

/// What to work on: the file, or a bare lot to begin with.
Expected<session::Session> first_session(const Arguments& arguments) {
  if (!arguments.file.empty()) return session::open_yard(arguments.file, session::state_folder());
  Site site;
  site.lot = rectangular_lot(600 * metres_per_foot, 500 * metres_per_foot);
  return session::new_yard(std::move(site), session::state_folder());
}

/// The question whose overlay and findings are shown first.
void choose_question(session::Session& session, std::string_view word) {
  for (const Question question : every_question) {
    if (names_of(question)[static_cast<std::size_t>(question)] == word) session.question = question;
  }
}

bool has_display() {
  const char* display = std::getenv("DISPLAY");
  return display != nullptr && *display != 0;
}

int run(const Arguments& arguments) {
  if (!has_display()) {
    std::fputs(
        "yardwright-editor: there is no display to open a window on; set DISPLAY, or use yardwright check and "
        "yardwright sheet\n",
        stderr);
    return 2;
  }
  auto first = first_session(arguments);
  if (!first) {
    for (const Problem& problem : first.error())
      std::fprintf(stderr, "yardwright-editor: %s\n", sentence(problem).c_str());
    return 2;
  }
  choose_question(*first, arguments.question);
  sf::Window window{mode_of(arguments), "yardwright", sf::Style::Default, sf::ContextSettings{0, 0, 0, 3, 0}};
  window.setFramerateLimit(60);
  window.setKeyRepeatEnabled(true);
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  InputBridge input;
  input.attach();
  look::Look look;
  look.scale = look::scale_for(window.getSize().x, window.getSize().y);
  look.letters = look::load_letters(look.scale);
  look::set_style(look.scale);
  ImGui_ImplOpenGL3_Init("#version 130");
  {
    App app{std::move(*first), shipped_catalogs(), look};
    Loop{window, app, input}.run(arguments.screenshot);
  }
  ImGui_ImplOpenGL3_Shutdown();
  ImGui::DestroyContext();
  return 0;
}

}  // namespace

}  // namespace yardwright::window

int main(int count, char** words) {
  yardwright::keep_freed_memory();
  yardwright::window::Arguments arguments;
  CLI::App program{"Draw a farm grain yard and ask it the six questions.", "yardwright-editor"};
  program.add_option("file", arguments.file, "a yard to open");
  program.add_option("--screenshot", arguments.screenshot, "write a picture of the window and end");
  program.add_option("--size", arguments.size, "of the window, 1400x900");
  program.add_option("--question", arguments.question, "shown first: reach, turn, drain, clear, pace or grow");
  try {
    program.parse(count, words);
    return yardwright::window::run(arguments);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? 0 : 2;
  } catch (const std::exception& error) {
    std::fprintf(stderr, "yardwright-editor: %s\n", error.what());
    return 2;
  }
}
