// Answers the six questions beside the window while the site is edited: the newest site is asked of, what is not back
// yet shows as stale, and the mends that take long are looked for once the hand rests.
#pragma once

#include <chrono>
#include <condition_variable>
#include <optional>
#include <thread>
#include <utility>

#include "geom/check/live_check.hpp"

namespace yardwright::session {

class AnswerDesk {
 public:
  explicit AnswerDesk(const Catalogs& catalogs);

  /// Hands in a site. One that waits is replaced by it; one that is being asked of is answered first.
  void ask(const Site& site);
  /// Whether everything but the long mends is back within a time.
  bool wait(std::chrono::milliseconds at_most);
  /// Whether those mends are back as well.
  bool is_at_rest() const;
  /// As far as they have come; from any thread.
  Answers answers() const;

 private:
  using Marks = std::array<bool, every_question.size()>;
  void work(const std::stop_token& stop);
  std::optional<Site> take_next(const std::stop_token& stop);

  mutable std::mutex lock_;
  std::condition_variable_any wake_, done_;
  std::optional<Site> newest_;  ///< handed in last
  std::optional<Site> waiting_;
  Marks reads_waiting_{};  ///< the questions that read something new in what waits
  bool asking_ = false;
  bool seeking_ = false;
  std::stop_source mends_;
  LiveCheck live_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

}  // namespace yardwright::session
