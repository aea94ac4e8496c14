#include "geom/grow/prover.hpp"

#include <algorithm>

#include "geom/check/reads.hpp"

namespace yardwright::grow {

namespace {

/// The quickest first, so that what breaks is soon known.
constexpr std::array asked_in_order{Question::clear, Question::reach, Question::pace, Question::turn, Question::drain};

bool is_wanting(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

/// "turn.clearance" of "turn.clearance-advice": rules of one family judge one thing, more or less strictly.
std::string_view family(std::string_view rule) { return rule.substr(0, rule.find('-')); }

bool is_of_same_matter(const Finding& a, const Finding& b) {
  return family(a.rule) == family(b.rule) && a.items == b.items;
}

DesignSurface surface_of(const Site& changed, const CheckedYard& before) {
  if (read_by_surface(changed) == read_by_surface(before.site)) return before.answers.surface;
  return design_surface(changed);
}

}  // namespace

Catalogs in_force(const Site& site, Catalogs shipped) {
  shipped.rules = shipped.rules.with(site.rule_overrides);
  return shipped;
}

Findings ask_again(Question question, const Site& changed, const CheckedYard& before, const MendSearch& search) {
  const DesignSurface surface = surface_of(changed, before);
  const Catalogs& catalogs = before.catalogs;
  switch (question) {
    case Question::reach: return reach::ask(changed, surface, catalogs).findings;
    case Question::turn: return turn::ask(changed, surface, catalogs, {search, before.answers.turn.get()}).findings;
    case Question::drain: return drain::ask(changed, surface, catalogs, {search, before.answers.drain.get()}).findings;
    case Question::clear: return clear::ask(changed, surface, catalogs).findings;
    case Question::pace: return pace::ask(changed, surface, catalogs).findings;
    case Question::grow: break;
  }
  return {};
}

Prover::Prover(const CheckedYard& yard, const Finding& finding, std::stop_token stop)
    : yard_{yard}, finding_{finding}, stop_{std::move(stop)} {
  for (const Finding& one : all_findings(yard.answers)) {
    const auto [at, is_new] = before_.try_emplace(one.id, one.verdict);
    if (!is_new) at->second = std::min(at->second, one.verdict);
    if (is_wanting(one)) wanting_before_.push_back(one);
  }
}

Findings Prover::asked(Question question, const Site& changed) const {
  return ask_again(question, changed, yard_, MendSearch{false});
}

std::vector<Question> Prover::questions_reading(const Site& changed) const {
  std::vector<Question> reading;
  std::ranges::copy_if(asked_in_order, std::back_inserter(reading),
                       [&](Question question) { return read_by(question, changed) != read_by(question, yard_.site); });
  return reading;
}

bool Prover::mends(const Site& changed) const {
  if (stopped()) return false;
  const Findings after = asked(finding_.question, changed);
  return std::ranges::all_of(after,
                             [&](const Finding& one) { return one.id != finding_.id || one.verdict == Verdict::pass; });
}

/// A finding that comes down to advice on the same matter is no worse for it.
bool Prover::is_broken(const Finding& after) const {
  if (after.verdict == Verdict::pass) return false;
  const auto was = before_.find(after.id);
  if (was != before_.end()) return after.verdict < was->second;
  if (after.verdict == Verdict::not_checked) return false;
  return after.verdict == Verdict::fail ||
         std::ranges::none_of(wanting_before_, [&](const Finding& one) { return is_of_same_matter(one, after); });
}

Findings Prover::broken(const Findings& after) const {
  Findings worse;
  std::ranges::copy_if(after, std::back_inserter(worse), [&](const Finding& one) { return is_broken(one); });
  return worse;
}

bool Prover::holds(const Edits& edits) const {
  const Site changed = apply(yard_.site, edits);
  if (!mends(changed)) return false;
  for (const Question question : questions_reading(changed)) {
    if (stopped() || !broken(asked(question, changed)).empty()) return false;
  }
  return true;
}

Proof Prover::prove(const Edits& edits) const {
  const Site changed = apply(yard_.site, edits);
  Proof proof{mends(changed), {}};
  for (const Question question : questions_reading(changed)) {
    Findings worse = broken(asked(question, changed));
    std::ranges::move(worse, std::back_inserter(proof.breaks));
  }
  return proof;
}

}  // namespace yardwright::grow
