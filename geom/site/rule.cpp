#include "geom/site/rule.hpp"

#include <algorithm>
#include <cassert>

namespace yardwright {

std::string_view words_for(Basis basis) {
  return basis == Basis::common_practice ? "common practice" : names_of(basis)[static_cast<std::size_t>(basis)];
}

RuleBook::RuleBook(std::vector<Rule> rules) : rules_{std::move(rules)} {}

const Rule& RuleBook::at(std::string_view id) const {
  const auto found = std::ranges::find(rules_, id, &Rule::id);
  assert(found != rules_.end());
  return *found;
}

bool RuleBook::has(std::string_view id) const { return std::ranges::find(rules_, id, &Rule::id) != rules_.end(); }

RuleBook RuleBook::with(const std::vector<RuleOverride>& overrides) const {
  RuleBook book = *this;
  for (const RuleOverride& own : overrides) {
    const auto found = std::ranges::find(book.rules_, own.rule, &Rule::id);
    if (found == book.rules_.end()) continue;
    found->value = own.value;
    found->basis = own.basis;
    found->own = true;
    found->source = own.reason.empty() ? "set for this site" : own.reason;
  }
  return book;
}

}  // namespace yardwright
