// Runs a storm over a yard beside the window: how far it has come, its story once it is done, and whether the yard has
// been changed since. One storm at a time; a new one ends the one in hand.
#pragma once

#include <atomic>
#include <memory>
#include <mutex>
#include <thread>

#include "geom/drain/storm/storm.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::session {

/// A storm that is over: what it was asked of, and what it told.
struct StormRecord {
  Site site;
  drain::storm::StormOptions options;
  drain::storm::StormStory story;
  Findings findings;
};

enum class StormAsk : std::uint8_t {
  this_storm,
  how_often  ///< and those of the rain table, for how often each thing happens
};

class StormDesk {
 public:
  explicit StormDesk(const Catalogs& catalogs) : catalogs_{catalogs} {}

  void run(const Site& site, const drain::storm::StormOptions& options, StormAsk ask = StormAsk::this_storm);
  /// Ends the storm in hand; what it told so far is kept as its story.
  void stop();

  bool is_running() const { return running_; }
  double done_ratio() const { return done_ratio_; }
  /// Another number whenever there is something new to show: a percent more done, an end.
  int news() const { return ended_ * 1000 + (running_ ? 1 + static_cast<int>(100 * done_ratio_) : 0); }
  /// The last one that was not refused; null before. From any thread.
  std::shared_ptr<const StormRecord> record() const;
  /// Why the last one could not be run.
  Problems refusal() const;

 private:
  void tell(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options, StormAsk ask);
  void work(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options, StormAsk ask);

  const Catalogs& catalogs_;
  std::atomic<bool> running_ = false;
  std::atomic<double> done_ratio_ = 0;
  std::atomic<int> ended_ = 0;
  mutable std::mutex lock_;
  std::shared_ptr<const StormRecord> record_;
  Problems refusal_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

/// Whether a storm is still that of the yard: nothing that Drain reads has been changed since.
bool is_of(const StormRecord& record, const Site& site);

}  // namespace yardwright::session
