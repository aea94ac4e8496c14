// The search for layouts: drafts are tried, those that hold and that no other beats are kept, and the next drafts are made of
// them. In rounds of drafts thrown and tried side by side, taken in by their number: so the same seed and the same number of
// tries keep the same layouts, however many threads there are. docs/methods/grow.md
#pragma once

#include <functional>
#include <stop_token>

#include "geom/grow/layout_drafts.hpp"
#include "geom/grow/layout_trial.hpp"

namespace yardwright::grow {

/// How far a search has come.
struct SearchProgress {
  double ground_ratio = 0;  ///< of the ground that is found before the first try
  int tried = 0;            ///< layouts that every question was asked of, or as many as it took
  int held = 0;
  std::size_t kept = 0;
  double most_stored_m3 = 0;         ///< of those that hold
  std::optional<double> least_cost;  ///< of those with all that is wanted
};

struct SearchEffort {
  std::uint64_t seed = 1;
  int tries = 2000;
  std::stop_token stop{};
  std::function<void(const SearchProgress&)> told{};  ///< after every round, by the thread that seeks
};

/// Layouts that hold, none of which is beaten by another in every aim.
class KeptLayouts {
 public:
  explicit KeptLayouts(const GrowthBrief& brief) : brief_{brief} {}

  /// Whether it was kept: it holds, and none that is kept beats it or is much the same.
  bool offer(LayoutTrial trial);
  const std::vector<LayoutTrial>& all() const { return all_; }

 private:
  const GrowthBrief& brief_;
  std::vector<LayoutTrial> all_;
  std::vector<Aims> aims_;
};

struct SearchResult {
  std::vector<LayoutTrial> kept;
  SearchProgress progress;
  bool has_ground = false;
  std::map<std::string, int>
      broken;  ///< what those that did not hold broke, by the words of the finding's rule, how often
  int too_dear = 0, unfilled = 0, moves_ground = 0;
};

SearchResult search_layouts(const GrowthTask& task, const SearchEffort& effort = {});

}  // namespace yardwright::grow
