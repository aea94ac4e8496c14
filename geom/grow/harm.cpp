#include "geom/grow/harm.hpp"

#include <algorithm>

namespace yardwright::grow {

namespace {

/// "turn.clearance" of "turn.clearance-advice": rules of one family judge one thing, more or less strictly.
std::string_view family(std::string_view rule) { return rule.substr(0, rule.find('-')); }

bool is_of_same_matter(const Finding& a, const Finding& b) {
  return family(a.rule) == family(b.rule) && a.items == b.items;
}

/// The yard with nothing but some of its things.
Site with_only(Site site, const std::vector<ItemId>& items) {
  std::erase_if(site.items, [&](const Item& item) { return std::ranges::count(items, item.id) == 0; });
  return site;
}

}  // namespace

bool is_wanting(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

Harm::Harm(const CheckedYard& yard) : yard_{yard} {
  for (const Finding& one : all_findings(yard.answers)) {
    const auto [at, is_new] = before_.try_emplace(one.id, one.verdict);
    if (!is_new) at->second = std::min(at->second, one.verdict);
    if (is_wanting(one)) wanting_before_.push_back(one);
  }
}

/// Of several things too near, Clear tells the nearest: the next was so before, if the two of them alone break the rule where
/// they stand. Rooms are of one thing, whoever fills them.
bool Harm::was_so_untold(const Finding& after) const {
  if (after.question != Question::clear || after.rule.ends_with("-room") || after.items.empty()) return false;
  const Findings alone = clear::ask(with_only(yard_.site, after.items), yard_.answers.surface, yard_.catalogs).findings;
  return std::ranges::any_of(alone,
                             [&](const Finding& one) { return one.id == after.id && one.verdict <= after.verdict; });
}

/// What comes down to advice on the same matter is no worse for it.
bool Harm::is_broken(const Finding& after) const {
  if (after.verdict == Verdict::pass) return false;
  const auto was = before_.find(after.id);
  if (was != before_.end()) return after.verdict < was->second;
  if (!is_wanting(after) || was_so_untold(after)) return false;
  return after.verdict == Verdict::fail ||
         std::ranges::none_of(wanting_before_, [&](const Finding& one) { return is_of_same_matter(one, after); });
}

Findings Harm::broken(const Findings& after) const {
  Findings worse;
  std::ranges::copy_if(after, std::back_inserter(worse), [&](const Finding& one) { return is_broken(one); });
  return worse;
}

}  // namespace yardwright::grow
