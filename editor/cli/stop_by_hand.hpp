// What ends a search before its time: Ctrl-C, or so many seconds. The second Ctrl-C ends the program.
#pragma once

#include <optional>
#include <stop_token>
#include <thread>

namespace yardwright::cli {

/// Watches while it lives; one at a time.
class StopByHand {
 public:
  explicit StopByHand(std::optional<double> seconds);
  ~StopByHand();
  StopByHand(const StopByHand&) = delete;
  StopByHand& operator=(const StopByHand&) = delete;

  std::stop_token token() const { return stop_.get_token(); }

 private:
  std::stop_source stop_;
  std::jthread watch_;
};

}  // namespace yardwright::cli
