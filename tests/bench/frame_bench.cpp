// The window's frames over a ground of a million cells, drawn by whatever OpenGL the display has and waited for until
// the last pixel is there: medians and worst times while the plan is panned and zoomed. Needs a display:
//   xvfb-run -a -s "-screen 0 1366x768x24" build-bench/tests/yardwright_frame_bench
// Times are for reading, never for a test's verdict.
#include <backends/imgui_impl_opengl3.h>
#include <imgui.h>

#include <SFML/OpenGL.hpp>
#include <SFML/Window.hpp>
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <thread>
#include <vector>

#include "editor/window/app.hpp"
#include "editor/window/render.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

using Clock = std::chrono::steady_clock;

constexpr double budget_ms = 16.6, aim_ms = 8;
constexpr int frames = 400;

double ms_since(Clock::time_point start) {
  return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

/// What every thread of this program has worked: on a machine that others use too, steadier than the clock.
double worked_ms() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

struct FrameTime {
  double total_ms = 0;   ///< until the last pixel is there
  double made_ms = 0;    ///< until it is handed to OpenGL
  double worked_ms = 0;  ///< of every thread
};

class Bench {
 public:
  Bench(unsigned width, unsigned height, const Site& site)
      : window_{{width, height}, "frame bench", sf::Style::None, sf::ContextSettings{0, 0, 0, 3, 0}} {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().DisplaySize = {static_cast<float>(width), static_cast<float>(height)};
    ImGui::GetIO().DeltaTime = 1.0F / 60;
    look::Look look;
    look.scale = look::scale_for(width, height);
    look.letters = look::load_letters(look.scale);
    look::set_style(look.scale);
    ImGui_ImplOpenGL3_Init("#version 130");
    app_ = std::make_unique<window::App>(session::session_of(site), shipped_catalogs(), look);
    point_at_plan();
  }
  ~Bench() {
    app_.reset();
    ImGui_ImplOpenGL3_Shutdown();
    ImGui::DestroyContext();
  }

  const char* renderer() const { return reinterpret_cast<const char*>(glGetString(GL_RENDERER)); }

  FrameTime frame() {
    const auto start = Clock::now();
    const double worked_before_ms = worked_ms();
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    app_->frame();
    ImGui::Render();
    FrameTime time;
    time.made_ms = ms_since(start);
    window::render(app_->plan_area());
    glFinish();
    time.total_ms = ms_since(start);
    time.worked_ms = worked_ms() - worked_before_ms;
    window_.display();
    return time;
  }

  void settle() {
    do {
      frame();
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
    } while (!app_->is_at_rest());
    for (int i = 0; i < 10; ++i) frame();
  }

  void point_at_plan() {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    ImGui::GetIO().MousePos = {size.x * 0.4F, size.y * 0.35F};
  }
  void hold(bool down) { ImGui::GetIO().MouseDown[1] = down; }
  void move(float x, float y) {
    ImGui::GetIO().MousePos.x += x;
    ImGui::GetIO().MousePos.y += y;
  }
  void wheel(float steps) { ImGui::GetIO().MouseWheel = steps; }

 private:
  sf::Window window_;
  std::unique_ptr<window::App> app_;
};

double part(std::vector<double> times, double share) {
  std::ranges::sort(times);
  return times[std::min(times.size() - 1, static_cast<std::size_t>(share * static_cast<double>(times.size())))];
}

void tell(const char* what, const std::vector<FrameTime>& times) {
  std::vector<double> total, made, worked;
  for (const FrameTime& time : times) {
    total.push_back(time.total_ms);
    made.push_back(time.made_ms);
    worked.push_back(time.worked_ms);
  }
  const double p99 = part(total, 0.99);
  const char* verdict = p99 <= aim_ms ? "within the aim" : p99 <= budget_ms ? "within the budget" : "over the budget";
  std::printf(
      "%-24s median %6.2f ms  p99 %6.2f  worst %6.2f | made: median %5.2f  p99 %6.2f | worked: median %6.2f  p99 %6.2f "
      "| %s\n",
      what, part(total, 0.5), p99, part(total, 1), part(made, 0.5), part(made, 0.99), part(worked, 0.5),
      part(worked, 0.99), verdict);
}

template <class Step>
void measure(Bench& bench, const char* what, Step step) {
  std::vector<FrameTime> times;
  for (int i = 0; i < frames; ++i) {
    step(i);
    times.push_back(bench.frame());
  }
  tell(what, times);
}

void still(Bench& bench) {
  measure(bench, "at rest", [](int) {});
}

/// Around and around, 9 px a frame.
void pan(Bench& bench, const char* what) {
  bench.point_at_plan();
  bench.frame();
  bench.hold(true);
  bench.frame();
  measure(bench, what, [&](int i) {
    const double turn = i * 0.06;
    bench.move(static_cast<float>(9 * std::cos(turn)), static_cast<float>(9 * std::sin(turn)));
  });
  bench.hold(false);
  bench.frame();
}

/// Twenty steps in, twenty out, a step a frame.
void zoom(Bench& bench, const char* what) {
  bench.point_at_plan();
  measure(bench, what, [&](int i) { bench.wheel(i / 20 % 2 == 0 ? 0.5F : -0.5F); });
}

}  // namespace

int main(int count, char** words) {
  const unsigned width = count > 1 ? static_cast<unsigned>(std::atoi(words[1])) : 1366;
  const unsigned height = count > 2 ? static_cast<unsigned>(std::atoi(words[2])) : 768;
  Bench bench{width, height, scenes::million_cell_yard()};
  bench.settle();
  std::printf("%u x %u px, %s; budget %.1f ms at p99, aim %.0f ms\n", width, height, bench.renderer(), budget_ms,
              aim_ms);
  still(bench);
  pan(bench, "panning, the whole yard");
  zoom(bench, "zooming, the whole yard");
  for (int i = 0; i < 8; ++i) {
    bench.wheel(1);
    bench.frame();
  }
  pan(bench, "panning, near");
  zoom(bench, "zooming, near");
}
