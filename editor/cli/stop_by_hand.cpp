#include "editor/cli/stop_by_hand.hpp"

#include <chrono>
#include <csignal>

namespace yardwright::cli {

namespace {

using Clock = std::chrono::steady_clock;
constexpr std::chrono::milliseconds glance{20};

volatile std::sig_atomic_t interrupted = 0;  // all that a signal may touch

void on_interrupt(int) {
  interrupted = 1;
  std::signal(SIGINT, SIG_DFL);
}

}  // namespace

StopByHand::StopByHand(std::optional<double> seconds) {
  interrupted = 0;
  std::signal(SIGINT, on_interrupt);
  const auto begun = Clock::now();
  watch_ = std::jthread{[this, seconds, begun](const std::stop_token& done) {
    while (!done.stop_requested()) {
      const std::chrono::duration<double> passed = Clock::now() - begun;
      if (interrupted != 0 || (seconds && passed.count() >= *seconds)) stop_.request_stop();
      std::this_thread::sleep_for(glance);
    }
  }};
}

StopByHand::~StopByHand() { std::signal(SIGINT, SIG_DFL); }

}  // namespace yardwright::cli
