#include "geom/grow/hindrances.hpp"

#include <tbb/parallel_for.h>

#include <algorithm>

#include "geom/grow/prover.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

Site without_items(Site site, const std::vector<ItemId>& items) {
  for (const ItemId id : items) site = yardwright::apply(std::move(site), RemoveItem{id});
  return site;
}

/// Whether a thing of the phase hangs on what is gone, or names it.
bool is_needed(const Site& site, const Site& without, int phase) {
  return std::ranges::any_of(site.items, [&](const Item& item) {
    if (item.phase != phase) return false;
    const Item* left = find(without, item.id);
    return left == nullptr || *left != item;
  });
}

/// Who is there before may suffer from what comes: to take it away would be no answer.
bool is_about(const Site& site, const Finding& finding, int phase, const std::vector<ItemId>& items) {
  if (std::ranges::none_of(finding.items, [&](ItemId id) { return std::ranges::count(items, id) > 0; })) return true;
  return std::ranges::any_of(finding.items, [&](ItemId id) {
    const Item* item = find(site, id);
    return item != nullptr && item->phase == phase;
  });
}

class Search {
 public:
  Search(const CheckedYard& yard, int phase, const Findings& wanting) : yard_{yard}, phase_{phase}, wanting_{wanting} {
    for (const Question question : every_question) {
      if (std::ranges::count(wanting, question, &Finding::question) > 0 && question != Question::grow)
        asked_.push_back(question);
    }
  }

  /// Those of the findings that pass or are gone without the items.
  Findings mended_without(const std::vector<ItemId>& items) const {
    const Site without = without_items(yard_.site, items);
    if (is_needed(yard_.site, without, phase_)) return {};
    std::vector<Question> questions = questions_reading(without, yard_.site);
    std::erase_if(questions, [&](Question question) { return std::ranges::count(asked_, question) == 0; });
    if (questions.empty()) return {};
    const Answers after = answers_after(without, yard_, questions, MendSearch{false});
    Findings mended;
    for (const Finding& one : wanting_) {
      if (std::ranges::count(questions, one.question) > 0 && is_about(yard_.site, one, phase_, items) &&
          passes(findings_of(after, one.question), one))
        mended.push_back(one);
    }
    return mended;
  }

 private:
  static bool passes(const Findings& after, const Finding& finding) {
    return std::ranges::all_of(
        after, [&](const Finding& one) { return one.id != finding.id || one.verdict == Verdict::pass; });
  }

  CheckedYard yard_;
  int phase_;
  const Findings& wanting_;
  std::vector<Question> asked_;
};

/// What is there before the phase: each thing alone, or all that one phase adds.
std::vector<std::vector<ItemId>> single_things(const Site& site, int phase) {
  std::vector<std::vector<ItemId>> all;
  for (const Item& item : site.items) {
    if (item.phase < phase) all.push_back({item.id});
  }
  return all;
}

std::vector<std::vector<ItemId>> whole_phases(const Site& site, int phase) {
  std::vector<std::vector<ItemId>> all;
  for (int before = 1; before < phase; ++before) {
    std::vector<ItemId>& one = all.emplace_back();
    for (const Item& item : site.items) {
      if (item.phase == before) one.push_back(item.id);
    }
    if (one.size() < 2) all.pop_back();
  }
  return all;
}

std::vector<Hindrance> found(const CheckedYard& yard, int phase, const Findings& wanting,
                             const std::vector<std::vector<ItemId>>& tried) {
  const Search search{yard, phase, wanting};
  std::vector<Findings> mended(tried.size());
  tbb::parallel_for(std::size_t{0}, tried.size(), [&](std::size_t i) { mended[i] = search.mended_without(tried[i]); });
  std::vector<Hindrance> all;
  for (std::size_t i = 0; i < tried.size(); ++i) {
    for (const Finding& one : mended[i]) all.push_back({tried[i], find(yard.site, tried[i].front())->phase, one});
  }
  return all;
}

}  // namespace

std::vector<Hindrance> hindrances_of(const CheckedYard& yard, int phase, const Findings& wanting) {
  std::vector<Hindrance> all = found(yard, phase, wanting, single_things(yard.site, phase));
  Findings left;
  std::ranges::copy_if(wanting, std::back_inserter(left), [&](const Finding& one) {
    return std::ranges::none_of(all, [&](const Hindrance& by) { return by.finding.id == one.id; });
  });
  std::ranges::move(found(yard, phase, left, whole_phases(yard.site, phase)), std::back_inserter(all));
  return all;
}

}  // namespace yardwright::grow
