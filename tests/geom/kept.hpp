// What "the mend works" means, for the tests of every question.
#pragma once

#include <algorithm>
#include <string_view>

#include "geom/site/finding.hpp"

namespace yardwright {

/// "clear.line" of "clear.line-roof", "turn.clearance" of "turn.clearance-advice": rules of one family judge one thing.
inline std::string_view family(std::string_view rule) { return rule.substr(0, rule.find('-')); }

/// Whether a finding that failed is kept once the site was mended. What passes may be told in one line with others of its
/// rule, or by another rule of the family; where nothing of the family is told any more, the mend took the question away.
inline bool is_kept(const Findings& again, const Finding& before) {
  const auto same = std::ranges::find(again, before.id, &Finding::id);
  if (same != again.end()) return same->verdict == Verdict::pass;
  return std::ranges::any_of(again, [&](const Finding& one) {
    return family(one.rule) == family(before.rule) && one.verdict != Verdict::not_checked;
  });
}

}  // namespace yardwright
