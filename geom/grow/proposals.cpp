#include "geom/grow/proposals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// What stands in for the worst of every aim: a little more than 1, so that the ends of the front count too.
constexpr double beyond = 1.1;

std::string money_words(double money, const PriceBook& book) { return number_text(money, 0) + " " + book.currency; }

void add_size_faults(Problems& faults, const GrowthBrief& brief) {
  if (brief.bins.empty())
    faults.push_back(
        {"no size of bin is given", "bins", "give at least one: \"36ft x 24ft\", diameter and eave height"});
  if (brief.bins.size() > most_bin_sizes)
    faults.push_back({fmt::format("{} sizes of bins are too many", brief.bins.size()), "bins",
                      fmt::format("give {} at most", most_bin_sizes)});
}

void add_leg_faults(Problems& faults, const GrowthTask& task) {
  if (leg_choice_count(task) > most_leg_choices)
    faults.push_back({fmt::format("the legs of the yard can be as high as that in {} ways", leg_choice_count(task)),
                      "leg-heights",
                      fmt::format("give fewer heights, so that there are {} at most", most_leg_choices)});
  for (const double height_m : task.brief.discharge_m) {
    const bool raises =
        std::ranges::any_of(task.legs, [&](const Item& leg) { return height_m >= as<Leg>(leg)->discharge_height_m; });
    if (!raises)
      faults.push_back({fmt::format("no leg is as low as {}", text_of(height_m, Quantity::length, task.site.units)),
                        "leg-heights", "give heights to raise a leg to, over what it has: no leg is lowered"});
  }
}

/// The layouts from which is chosen: those with all that is wanted, where there are any.
class Choice {
 public:
  Choice(const std::vector<LayoutTrial>& kept, const GrowthBrief& brief) : brief_{brief} {
    const bool any = std::ranges::any_of(kept, [&](const LayoutTrial& one) { return meets(one.measures, brief); });
    for (const LayoutTrial& one : kept) {
      if (!any || meets(one.measures, brief)) left_.push_back(&one);
    }
    scale();
  }

  /// The one that adds most to what those chosen dominate together, and is unlike each of them; the first is the cheapest of
  /// those with most of what is wanted.
  const LayoutTrial* next() {
    const LayoutTrial* best = nullptr;
    double most = -infinite;
    for (const LayoutTrial* one : left_) {
      const double worth = chosen_.empty() ? -first_rank(*one) : gain(*one);
      if (worth > most) best = one, most = worth;
    }
    if (best == nullptr) return nullptr;
    chosen_.push_back(scaled(*best));
    std::erase_if(left_, [&](const LayoutTrial* one) { return apart_m(one->layout, best->layout) < unlike_from_m; });
    return best;
  }
  /// One that did not stand the fresh check is not counted.
  void take_back() { chosen_.pop_back(); }

 private:
  void scale() {
    for (const LayoutTrial* one : left_) {
      const Aims aims = aims_of(one->measures, brief_);
      if (low_.empty()) low_ = high_ = aims;
      for (std::size_t i = 0; i < aims.size(); ++i) {
        low_[i] = std::min(low_[i], aims[i]);
        high_[i] = std::max(high_[i], aims[i]);
      }
    }
  }
  /// Each aim from 0 to 1 over what was kept.
  Aims scaled(const LayoutTrial& one) const {
    Aims aims = aims_of(one.measures, brief_);
    for (std::size_t i = 0; i < aims.size(); ++i) {
      const double range = high_[i] - low_[i];
      aims[i] = range > 0 ? (aims[i] - low_[i]) / range : 0;
    }
    return aims;
  }
  double first_rank(const LayoutTrial& one) const {
    const Aims aims = aims_of(one.measures, brief_);
    constexpr double storage_first = 1e6;
    return aims[0] * storage_first + aims[1];
  }
  double gain(const LayoutTrial& one) const {
    std::vector<Aims> points = chosen_;
    points.push_back(scaled(one));
    return hypervolume(std::move(points), Aims(low_.size(), beyond));
  }

  const GrowthBrief& brief_;
  std::vector<const LayoutTrial*> left_;
  Aims low_, high_;
  std::vector<Aims> chosen_;
};

/// The cheapest bin of those that the brief allows, by itself.
double least_bin_cost(const GrowthTask& task) {
  double least = infinite;
  for (std::size_t size = 0; size < task.brief.bins.size(); ++size) {
    Site site;
    site.rule_overrides = task.site.rule_overrides;
    site.items = {{ItemId{1}, "", 0, {}, task.bin_of(size)}};
    least = std::min(least, cost_of(quantities(site, {}, task.shipped), task.book).sum);
  }
  return least;
}

/// Why no search is needed to know that nothing is paid for; empty where it may be.
std::string poor_words(const GrowthTask& task) {
  if (!task.brief.budget) return {};
  const double least = least_bin_cost(task);
  if (least <= *task.brief.budget) return {};
  return fmt::format("the budget of {} pays for no bin: the cheapest of these sizes takes {} without its spout",
                     money_words(*task.brief.budget, task.book), money_words(least, task.book));
}

std::string most_broken_words(const GrowthTask& task, const SearchResult& found) {
  const auto most = std::ranges::max_element(found.broken, {}, [](const auto& one) { return one.second; });
  if (most == found.broken.end()) return {};
  return fmt::format("; what stood in the way most often was the rule {} ({})", most->first,
                     task.catalogs.rules.at(most->first).label);
}

std::string why_none(const GrowthTask& task, const SearchResult& found) {
  if (found.progress.ground_ratio < 1 && !found.has_ground) return "it was stopped before the free ground was found";
  if (!found.has_ground)
    return fmt::format(
        "no bin of these sizes fits on {} ground under any of these leg heights: yardwright grow tells what "
        "is in the way{}",
        task.brief.bears_advice ? "allowed" : "free",
        task.brief.bears_advice ? "" : "; where cautions are borne there may be more");
  if (found.progress.tried == 0) return "it was stopped before a layout was tried";
  if (found.too_dear > 0 && found.broken.empty())
    return fmt::format("every layout that was tried costs more than the budget of {}",
                       money_words(*task.brief.budget, task.book));
  return fmt::format("of {} layouts that were tried none passes{}", found.progress.tried,
                     most_broken_words(task, found));
}

}  // namespace

double apart_m(const Layout& a, const Layout& b) {
  if (a.discharge_m != b.discharge_m || a.stands.size() != b.stands.size()) return infinite;
  std::vector<Stand> left = b.stands;
  double farthest_m = 0;
  for (const Stand& one : a.stands) {
    const auto away_m = [&](const Stand& other) {
      return other.size == one.size ? distance(one.at, other.at) : infinite;
    };
    const auto nearest = std::ranges::min_element(left, {}, away_m);
    farthest_m = std::max(farthest_m, away_m(*nearest));
    left.erase(nearest);
  }
  return farthest_m;
}

Problems faults_of(const GrowthTask& task) {
  Problems faults;
  const GrowthBrief& brief = task.brief;
  if (task.site.lot.corners.size() < 3)
    faults.push_back({"the lot is not drawn", task.site.name, "draw its corners, and what can stand in it is sought"});
  if (task.legs.empty())
    faults.push_back({"no leg stands in the yard, and a bin is filled by one", task.site.name,
                      "place a leg where it is to stand: yardwright grow tells where a thing of its size can"});
  if (brief.wanted_m3 < cubic_metres_per_bushel)
    faults.push_back({"no more storage is wanted", "wanted", "give how much, as in 40000bu"});
  add_size_faults(faults, brief);
  if (find(task.catalogs.grains, task.model.grain) == nullptr)
    faults.push_back({fmt::format("the grain \"{}\" is not known", task.model.grain), "grain",
                      "give one of the grain catalogue, as in corn"});
  if (faults.empty()) add_leg_faults(faults, task);
  return faults;
}

Proposals propose(const GrowthTask& task, const ProposalEffort& effort) {
  if (std::string words = poor_words(task); !words.empty()) return {{}, {}, std::move(words)};
  const SearchResult found = search_layouts(task, effort.search);
  Proposals proposals{{}, found.progress, {}};
  const LayoutTrials trials{task};
  Choice choice{found.kept, task.brief};
  while (proposals.list.size() < effort.most) {
    const LayoutTrial* next = choice.next();
    if (next == nullptr) break;
    LayoutTrial afresh = trials.tried_afresh(next->layout);
    if (!afresh.holds()) {
      choice.take_back();
      continue;
    }
    const bool enough = meets(afresh.measures, task.brief);
    proposals.list.push_back({"", std::move(afresh.layout), std::move(afresh.edits), afresh.measures,
                              std::move(afresh.not_checked), enough});
  }
  std::ranges::stable_sort(proposals.list, [](const Proposal& a, const Proposal& b) {
    return a.meets && b.meets ? a.measures.cost < b.measures.cost : a.measures.stored_m3 > b.measures.stored_m3;
  });
  for (std::size_t i = 0; i < proposals.list.size(); ++i) proposals.list[i].name = fmt::format("proposal-{}", i + 1);
  if (proposals.list.empty()) proposals.why_none = why_none(task, found);
  return proposals;
}

}  // namespace yardwright::grow
