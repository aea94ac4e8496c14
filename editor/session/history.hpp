// Undo and redo by whole values: a Site costs kilobytes to copy and undo must return exactly what was there. A
// change under way (a drag) is shown as a proposal and becomes one step when it ends.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright::session {

class History {
 public:
  explicit History(Site first = {});

  /// The site as it is shown: with the proposal, where there is one.
  const Site& shown() const { return proposal_ ? *proposal_ : steps_[now_]; }
  /// The site of the last step, without a proposal.
  const Site& settled() const { return steps_[now_]; }
  /// Grows whenever shown() changes.
  std::uint64_t revision() const { return revision_; }

  /// Takes the place of another history: its revisions go on from there, so that no two sites share one.
  void follow(const History& before) { revision_ += before.revision_; }

  void propose(Site site);
  void drop_proposal();
  /// The proposal becomes a step, unless it is the same as before it.
  void keep_proposal();
  /// A site becomes a step, unless it is the same as the one before it.
  void add_step(Site site);

  bool can_undo() const { return now_ > 0; }
  bool can_redo() const { return now_ + 1 < steps_.size(); }
  void undo();
  void redo();

 private:
  std::vector<Site> steps_;
  std::size_t now_ = 0;
  std::optional<Site> proposal_;
  std::uint64_t revision_ = 1;
};

}  // namespace yardwright::session
