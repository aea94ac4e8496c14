#include "geom/grow/layout_search.hpp"

#include <tbb/parallel_for.h>

#include <algorithm>
#include <cmath>

namespace yardwright::grow {

namespace {

constexpr int round_size = 16;       // the same on every machine: rounds decide what is drafted
constexpr double fresh_share = 0.2;  // of drafts that owe nothing to what is kept: without them a search gets stuck
constexpr double alike = 0.01;       // of every aim: nearer ones are the same to whoever chooses

bool are_alike(const Aims& a, const Aims& b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (std::abs(a[i] - b[i]) > alike) return false;
  }
  return true;
}

class Search {
 public:
  Search(const GrowthTask& task, const SearchEffort& effort)
      : task_{task}, effort_{effort}, kept_{task.brief}, trials_{task}, drafts_{task, effort.stop, [this](double done) {
                                                                                  result_.progress.ground_ratio = done;
                                                                                  tell();
                                                                                }} {}

  SearchResult run() {
    result_.has_ground = drafts_.has_ground();
    while (result_.has_ground && result_.progress.tried < effort_.tries && !effort_.stop.stop_requested()) {
      take_in(tried(drafted()));
      tell();
    }
    result_.kept = kept_.all();
    return std::move(result_);
  }

 private:
  void tell() const {
    if (effort_.told) effort_.told(result_.progress);
  }

  /// By its number among all drafts, and by what is kept before its round.
  Layout draft(std::size_t number) const {
    Dice dice{effort_.seed, number};
    const std::size_t plain = std::min(drafts_.plain_count(), static_cast<std::size_t>(effort_.tries) / 2);
    if (number < plain) return drafts_.plain(number * drafts_.plain_count() / plain, dice);
    const std::vector<LayoutTrial>& all = kept_.all();
    if (all.empty() || dice.hits(fresh_share)) return drafts_.thrown(dice);
    // Half of the time of two the one with more storage: what is wanted is that.
    const LayoutTrial &a = all[dice.below(all.size())], &b = all[dice.below(all.size())];
    if (dice.hits(0.5)) return drafts_.varied(a.layout, dice);
    const auto enough = [&](const LayoutTrial& one) { return std::min(one.measures.stored_m3, task_.brief.wanted_m3); };
    return drafts_.varied(enough(a) >= enough(b) ? a.layout : b.layout, dice);
  }

  std::vector<Layout> drafted() {
    const std::size_t count = static_cast<std::size_t>(std::min(round_size, effort_.tries - result_.progress.tried));
    std::vector<Layout> layouts(count);
    tbb::parallel_for(std::size_t{0}, count, [&](std::size_t i) { layouts[i] = draft(drafted_ + i); });
    drafted_ += count;
    return layouts;
  }

  /// Those left out when it is stopped have no edits and no stands.
  std::vector<LayoutTrial> tried(const std::vector<Layout>& layouts) const {
    std::vector<LayoutTrial> trials(layouts.size());
    tbb::parallel_for(std::size_t{0}, layouts.size(), [&](std::size_t i) {
      if (!layouts[i].stands.empty() && !effort_.stop.stop_requested()) trials[i] = trials_.tried(layouts[i]);
    });
    return trials;
  }

  void take_in(std::vector<LayoutTrial> trials) {
    SearchProgress& progress = result_.progress;
    for (LayoutTrial& trial : trials) {
      ++progress.tried;
      if (!trial.holds()) {
        count_why_not(trial);
        continue;
      }
      ++progress.held;
      const LayoutMeasures& measures = trial.measures;
      progress.most_stored_m3 = std::max(progress.most_stored_m3, measures.stored_m3);
      if (meets(measures, task_.brief))
        progress.least_cost = std::min(progress.least_cost.value_or(measures.cost), measures.cost);
      kept_.offer(std::move(trial));
    }
    progress.kept = kept_.all().size();
  }

  void count_why_not(const LayoutTrial& trial) {
    if (trial.layout.stands.empty()) return;
    if (trial.edits.empty()) ++result_.unfilled;
    if (trial.too_dear) ++result_.too_dear;
    if (trial.moves_ground) ++result_.moves_ground;
    for (const Finding& finding : trial.broken) ++result_.broken[finding.rule];
  }

  const GrowthTask& task_;
  const SearchEffort& effort_;
  SearchResult result_;
  KeptLayouts kept_;
  LayoutTrials trials_;
  LayoutDrafts drafts_;
  std::size_t drafted_ = 0;
};

}  // namespace

bool KeptLayouts::offer(LayoutTrial trial) {
  if (!trial.holds()) return false;
  Aims aims = aims_of(trial.measures, brief_);
  const auto keeps_out = [&](const Aims& other) {
    return dominates(other, aims) || other == aims || (are_alike(other, aims) && !dominates(aims, other));
  };
  if (std::ranges::any_of(aims_, keeps_out)) return false;
  std::size_t left = 0;
  for (std::size_t i = 0; i < all_.size(); ++i) {
    if (dominates(aims, aims_[i])) continue;
    if (left != i) all_[left] = std::move(all_[i]), aims_[left] = std::move(aims_[i]);
    ++left;
  }
  all_.resize(left);
  aims_.resize(left);
  all_.push_back(std::move(trial));
  aims_.push_back(std::move(aims));
  return true;
}

SearchResult search_layouts(const GrowthTask& task, const SearchEffort& effort) { return Search{task, effort}.run(); }

}  // namespace yardwright::grow
