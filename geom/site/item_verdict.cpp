#include "geom/site/item_verdict.hpp"

#include <algorithm>

namespace yardwright {

Verdict verdict_on(const Findings& findings, ItemId id) {
  Verdict verdict = Verdict::pass;
  for (const Finding& finding : findings) {
    if (std::ranges::find(finding.items, id) != finding.items.end()) verdict = std::min(verdict, finding.verdict);
  }
  return verdict;
}

}  // namespace yardwright
