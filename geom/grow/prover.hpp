// Whether a change mends a finding without harm: the yard with it is asked every question that reads it, and every finding is
// held against that of the yard before. A question is told its answer before, so that it asks anew only what differs.
#pragma once

#include <stop_token>

#include "geom/grow/harm.hpp"

namespace yardwright::grow {

/// What a change does to the findings.
struct Proof {
  bool mended = false;  ///< the finding passes, or is gone
  Findings breaks;      ///< worse than before, or new and not passing
  bool holds() const { return mended && breaks.empty(); }
};

class Prover {
 public:
  Prover(const CheckedYard& yard, const Finding& finding, std::stop_token stop = {});

  /// The finding alone.
  bool mends(const Edits& edits) const { return mends(apply(yard_.site, edits)); }
  /// That, and nothing broken; asks no more than it takes to tell. False once it is stopped.
  bool holds(const Edits& edits) const;
  /// All of it. Of what it breaks, those mends that take long are not sought.
  Proof prove(const Edits& edits) const;

  const CheckedYard& yard() const { return yard_; }
  const Finding& finding() const { return finding_; }
  bool stopped() const { return stop_.stop_requested(); }
  const std::stop_token& stop() const { return stop_; }

 private:
  bool mends(const Site& changed) const;
  Findings asked(Question question, const Site& changed) const;

  CheckedYard yard_;
  const Finding& finding_;
  std::stop_token stop_;
  Harm harm_;
};

/// The answers of a yard with those questions asked anew of it as it is changed.
Answers answers_after(const Site& changed, const CheckedYard& before, const std::vector<Question>& questions,
                      const MendSearch& search);

/// Those whose answer the change can change.
std::vector<Question> questions_reading(const Site& changed, const Site& before);

/// The shipped catalogues with the site's own rules.
Catalogs in_force(const Site& site, Catalogs shipped);

}  // namespace yardwright::grow
