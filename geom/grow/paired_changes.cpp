#include "geom/grow/paired_changes.hpp"

#include <algorithm>
#include <array>

#include "geom/grow/effort.hpp"
#include "geom/grow/part_of_mend.hpp"
#include "geom/grow/single_changes.hpp"

namespace yardwright::grow {

namespace {

constexpr std::size_t most_broken = 3;  ///< by a first mend that a second one may set right
constexpr std::size_t most_firsts = 4;
constexpr std::size_t most_proofs = 32;
constexpr std::size_t most_sought = 2;
constexpr std::array halves{0.25, 0.5, 0.75};
constexpr double exact_part = 0.002;

class Pairs {
 public:
  Pairs(const Prover& prover, const std::vector<Change>& harmful)
      : prover_{prover}, harmful_{harmful}, site_{prover.yard().site} {}

  std::optional<Change> least() {
    add_second_mends();
    add_halves();
    if (auto proven = least_proven()) return proven;
    pairs_.clear();
    add_sought_seconds();
    return least_proven();
  }

 private:
  std::optional<Change> least_proven() {
    std::ranges::stable_sort(pairs_, {}, &Change::effort_m);
    if (pairs_.size() > most_proofs) pairs_.resize(most_proofs);
    const auto proven = std::ranges::find_if(pairs_, [&](const Change& pair) { return prover_.holds(pair.edits()); });
    return proven == pairs_.end() ? std::nullopt : std::optional{*proven};
  }

  void add(const Mend& first, const Mend& second, const Site& between) {
    const RuleBook& rules = prover_.yard().catalogs.rules;
    pairs_.push_back({{first, second}, effort_m(site_, first, rules) + effort_m(between, second, rules), {}});
  }

  /// The mends of a finding that is broken in the yard with the first change; those that take long are sought anew.
  std::vector<Mend> mends_of(const Finding& broken, const Site& changed) const {
    if (broken.question != Question::turn && broken.question != Question::drain) return broken.mends;
    const MendSearch search{true, prover_.stop()};
    const Answers after = answers_after(changed, prover_.yard(), {broken.question}, search);
    for (const Finding& one : findings_of(after, broken.question)) {
      if (one.id == broken.id) return one.mends;
    }
    return {};
  }

  void add_second_mends() {
    std::size_t firsts = 0;
    for (const Change& first : harmful_) {
      if (first.breaks.size() > most_broken || ++firsts > most_firsts || prover_.stopped()) continue;
      const Site changed = yardwright::apply(site_, first.edits());
      for (const Finding& broken : first.breaks) {
        for (const Mend& second : mends_of(broken, changed)) add(first.mends.front(), second, changed);
      }
    }
  }

  /// The least change of one thing for the only finding that a first mend breaks, sought in the yard with that mend.
  void add_sought_seconds() {
    std::size_t firsts = 0;
    for (const Change& first : harmful_) {
      if (first.breaks.size() > 1 || ++firsts > most_sought || prover_.stopped()) continue;
      const Site changed = yardwright::apply(site_, first.edits());
      const Answers after =
          answers_after(changed, prover_.yard(), questions_reading(changed, site_), MendSearch{false});
      const CheckedYard yard{changed, after, prover_.yard().catalogs};
      Finding broken = first.breaks.front();
      broken.mends = mends_of(broken, changed);
      KnownReasons reasons;
      const Found second = single_changes(Prover{yard, broken, prover_.stop()}, reasons);
      if (second.least) add(first.mends.front(), second.least->mends.front(), changed);
    }
  }

  void add_halves() {
    const std::vector<Mend>& own = prover_.finding().mends;
    for (const Mend& first : own) {
      for (const Mend& second : own) {
        if (&first == &second || !comes_in_parts(site_, first) || !comes_in_parts(site_, second)) continue;
        for (const double part : halves) add_half(first, part, second);
      }
    }
  }

  /// A part of the first with the least part of the second that then mends the finding.
  void add_half(const Mend& first, double part, const Mend& second) {
    const auto half = part_of(first, part, site_, site_);
    if (!half || prover_.stopped()) return;
    const Site between = yardwright::apply(site_, half->edits);
    const auto with = [&](double other_part) { return part_of(second, other_part, site_, between); };
    const auto mends = [&](const std::optional<Mend>& other) {
      return other && prover_.mends(Change{{*half, *other}, 0, {}}.edits());
    };
    std::optional<Mend> enough = with(1);
    if (!mends(enough)) return;
    double fails = 0, passes = 1;
    while (passes - fails > exact_part) {
      const double middle = (passes + fails) / 2;
      auto other = with(middle);
      const bool is_enough = mends(other);
      (is_enough ? passes : fails) = middle;
      if (is_enough) enough = std::move(other);
    }
    add(*half, *enough, between);
  }

  const Prover& prover_;
  const std::vector<Change>& harmful_;
  const Site& site_;
  std::vector<Change> pairs_;
};

}  // namespace

std::optional<Change> paired_change(const Prover& prover, const std::vector<Change>& harmful) {
  return Pairs{prover, harmful}.least();
}

}  // namespace yardwright::grow
