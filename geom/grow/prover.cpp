#include "geom/grow/prover.hpp"

#include <algorithm>

#include "geom/check/reads.hpp"

namespace yardwright::grow {

namespace {

/// The quickest first, so that what breaks is soon known.
constexpr std::array asked_in_order{Question::clear, Question::reach, Question::pace, Question::turn, Question::drain};

template <class Part>
std::shared_ptr<const Part> shared(Part answer) {
  return std::make_shared<const Part>(std::move(answer));
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
    : yard_{yard}, finding_{finding}, stop_{std::move(stop)}, harm_{yard} {}

Findings Prover::asked(Question question, const Site& changed) const {
  return findings_of(answers_after(changed, yard_, {question}, MendSearch{false}), question);
}

bool Prover::mends(const Site& changed) const {
  if (stopped()) return false;
  const Findings after = asked(finding_.question, changed);
  return std::ranges::all_of(after,
                             [&](const Finding& one) { return one.id != finding_.id || one.verdict == Verdict::pass; });
}

bool Prover::holds(const Edits& edits) const {
  const Site changed = apply(yard_.site, edits);
  if (!mends(changed)) return false;
  for (const Question question : questions_reading(changed, yard_.site)) {
    if (stopped() || !harm_.broken(asked(question, changed)).empty()) return false;
  }
  return true;
}

Proof Prover::prove(const Edits& edits) const {
  const Site changed = apply(yard_.site, edits);
  Proof proof{mends(changed), {}};
  for (const Question question : questions_reading(changed, yard_.site)) {
    Findings worse = harm_.broken(asked(question, changed));
    std::ranges::move(worse, std::back_inserter(proof.breaks));
  }
  return proof;
}

}  // namespace yardwright::grow
