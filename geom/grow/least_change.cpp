#include "geom/grow/least_change.hpp"

#include "geom/grow/paired_changes.hpp"
#include "geom/grow/single_changes.hpp"

namespace yardwright::grow {

bool wants_change(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

LeastChanges::LeastChanges(Site site, Answers answers, const Catalogs& shipped)
    : site_{std::move(site)}, answers_{std::move(answers)}, catalogs_{in_force(site_, shipped)} {}

Found LeastChanges::of(const Finding& finding, std::stop_token stop) {
  const Prover prover{{site_, answers_, catalogs_}, finding, std::move(stop)};
  Found found = single_changes(prover, reasons_);
  if (!found.least && !prover.stopped()) found.least = paired_change(prover, found.harmful);
  return found;
}

}  // namespace yardwright::grow
