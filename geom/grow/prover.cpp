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

template <class Part>
std::shared_ptr<const Part> shared(Part answer) {
  return std::make_shared<const Part>(std::move(answer));
}

/// The yard with nothing but some of its things.
Site with_only(Site site, const std::vector<ItemId>& items) {
  std::erase_if(site.items, [&](const Item& item) { return std::ranges::count(items, item.id) == 0; });
  return site;
}

}  // namespace

Catalogs in_force(const Site& site, Catalogs shipped) {
  shipped.rules = shipped.rules.with(site.rule_overrides);
  return shipped;
}

Answers answers_after(const Site& changed, const CheckedYard& before, const std::vector<Question>& questions,
                      const MendSearch& search) {
  Answers answers = before.answers;
  if (read_by_surface(changed) != read_by_surface(before.site)) answers.surface = design_surface(changed);
  const DesignSurface& surface = answers.surface;
  const Catalogs& catalogs = before.catalogs;
  for (const Question question : questions) switch (question) {
      case Question::reach: answers.reach = shared(reach::ask(changed, surface, catalogs)); break;
      case Question::turn:
        answers.turn = shared(turn::ask(changed, surface, catalogs, {search, before.answers.turn.get()}));
        break;
      case Question::drain:
        answers.drain = shared(drain::ask(changed, surface, catalogs, {search, before.answers.drain.get()}));
        break;
      case Question::clear: answers.clear = shared(clear::ask(changed, surface, catalogs)); break;
      case Question::pace: answers.pace = shared(pace::ask(changed, surface, catalogs)); break;
      case Question::grow: break;
    }
  return answers;
}

std::vector<Question> questions_reading(const Site& changed, const Site& before) {
  std::vector<Question> reading;
  std::ranges::copy_if(asked_in_order, std::back_inserter(reading),
                       [&](Question question) { return read_by(question, changed) != read_by(question, before); });
  return reading;
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
  return findings_of(answers_after(changed, yard_, {question}, MendSearch{false}), question);
}

bool Prover::mends(const Site& changed) const {
  if (stopped()) return false;
  const Findings after = asked(finding_.question, changed);
  return std::ranges::all_of(after,
                             [&](const Finding& one) { return one.id != finding_.id || one.verdict == Verdict::pass; });
}

/// Of several things too near, Clear tells the nearest: the next was so before, if the two of them alone break the rule where
/// they stand. Rooms are of one thing, whoever fills them.
bool Prover::was_so_untold(const Finding& after) const {
  if (after.question != Question::clear || after.rule.ends_with("-room") || after.items.empty()) return false;
  const Findings alone = clear::ask(with_only(yard_.site, after.items), yard_.answers.surface, yard_.catalogs).findings;
  return std::ranges::any_of(alone,
                             [&](const Finding& one) { return one.id == after.id && one.verdict <= after.verdict; });
}

/// What comes down to advice on the same matter is no worse for it.
bool Prover::is_broken(const Finding& after) const {
  if (after.verdict == Verdict::pass) return false;
  const auto was = before_.find(after.id);
  if (was != before_.end()) return after.verdict < was->second;
  if (!is_wanting(after) || was_so_untold(after)) return false;
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
  for (const Question question : questions_reading(changed, yard_.site)) {
    if (stopped() || !broken(asked(question, changed)).empty()) return false;
  }
  return true;
}

Proof Prover::prove(const Edits& edits) const {
  const Site changed = apply(yard_.site, edits);
  Proof proof{mends(changed), {}};
  for (const Question question : questions_reading(changed, yard_.site)) {
    Findings worse = broken(asked(question, changed));
    std::ranges::move(worse, std::back_inserter(proof.breaks));
  }
  return proof;
}

}  // namespace yardwright::grow
