// Seeks layouts by which the yard can grow beside the window: it goes on until it is stopped or done, and what was found by
// then stands.
#pragma once

#include <atomic>
#include <memory>
#include <mutex>
#include <thread>

#include "editor/session/session.hpp"
#include "geom/grow/proposals.hpp"

namespace yardwright::session {

struct ProposalRecord {
  std::unique_ptr<const grow::GrowthTask> task;
  grow::Proposals found;
  bool whole = false;  ///< not stopped on the way
};

/// What a search is to begin with: the same seed and tries find the same.
struct ProposalAsk {
  GrowthBrief brief;
  std::uint64_t seed = 1;
  int tries = 1000;
  bool operator==(const ProposalAsk&) const = default;
};

class ProposalDesk {
 public:
  explicit ProposalDesk(const Catalogs& shipped) : shipped_{shipped} {}

  /// Ends the search in hand; what was found before goes.
  void seek(Site whole, ProposalAsk ask, PriceBook prices);
  void stop() { worker_.request_stop(); }

  bool is_seeking() const { return seeking_; }
  grow::SearchProgress progress() const;
  /// Another number whenever there is something new to show.
  int news() const { return news_; }
  /// The last one; null before, and while the search in hand goes on.
  std::shared_ptr<const ProposalRecord> record() const;
  /// Why the last one could not be begun.
  Problems refusal() const;

 private:
  void work(const std::stop_token& stop, Site whole, const ProposalAsk& ask, PriceBook prices);
  void tell(const grow::SearchProgress& progress);

  const Catalogs& shipped_;
  std::atomic<bool> seeking_ = false;
  std::atomic<int> news_ = 0;
  mutable std::mutex lock_;
  grow::SearchProgress progress_;
  std::shared_ptr<const ProposalRecord> record_;
  Problems refusal_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

/// Whether it is of the yard as it is, in every phase.
bool is_of(const ProposalRecord& record, const Session& session);
/// One undoable step: all that a proposal builds, in a phase of its own, which is shown then.
void build_proposal(Session& session, const grow::Proposal& proposal);

}  // namespace yardwright::session
