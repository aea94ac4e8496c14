#include "editor/session/history.hpp"

#include <utility>

namespace yardwright::session {

namespace {
constexpr std::size_t most_steps = 1000;  // a forgotten step is better than a machine without memory
}

History::History(Site first) { steps_.push_back(std::move(first)); }

void History::propose(Site site) {
  if (site == shown()) return;
  proposal_ = std::move(site);
  ++revision_;
}

void History::drop_proposal() {
  if (!proposal_) return;
  proposal_.reset();
  ++revision_;
}

void History::keep_proposal() {
  if (!proposal_) return;
  Site site = std::move(*proposal_);
  proposal_.reset();
  add_step(std::move(site));
}

void History::add_step(Site site) {
  drop_proposal();
  if (site == settled()) return;
  steps_.resize(now_ + 1);
  steps_.push_back(std::move(site));
  if (steps_.size() > most_steps) steps_.erase(steps_.begin());
  now_ = steps_.size() - 1;
  ++revision_;
}

void History::undo() {
  drop_proposal();
  if (!can_undo()) return;
  --now_;
  ++revision_;
}

void History::redo() {
  drop_proposal();
  if (!can_redo()) return;
  ++now_;
  ++revision_;
}

}  // namespace yardwright::session
