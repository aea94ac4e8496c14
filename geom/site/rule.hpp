// The limits that the questions judge by: each a number with its basis and source, set once in the shipped rule
// book (assets/rules.json) and overridable in a site, which keeps its own basis and reason. Local code wins.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geom/site/question.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

enum class Basis : std::uint8_t { law, standard, handbook, common_practice, local, geometry };
constexpr std::array<std::string_view, 6> names_of(Basis) {
  return {"law", "standard", "handbook", "common-practice", "local", "geometry"};
}
/// The same for reading: "common practice".
std::string_view words_for(Basis basis);

struct Rule {
  std::string id;  ///< "reach.slope-dry"; the part before the dot is its question
  std::string label;
  Quantity quantity = Quantity::ratio;
  double value = 0;  ///< SI
  Basis basis = Basis::common_practice;
  std::string source;
  bool own = false;  ///< the value is the site's own, not the book's
  bool operator==(const Rule&) const = default;
};

/// A site's own value for a rule, in place of the book's.
struct RuleOverride {
  std::string rule;
  double value = 0;  ///< SI
  Basis basis = Basis::local;
  std::string reason;
  bool operator==(const RuleOverride&) const = default;
};

class RuleBook {
 public:
  RuleBook() = default;
  explicit RuleBook(std::vector<Rule> rules);

  /// The rule with this id; asking for one that the book lacks is our own mistake.
  const Rule& at(std::string_view id) const;
  bool has(std::string_view id) const;
  const std::vector<Rule>& rules() const { return rules_; }  ///< in the book's order

  /// The book with a site's own values; overrides of unknown rules are left out.
  RuleBook with(const std::vector<RuleOverride>& overrides) const;
  bool operator==(const RuleBook&) const = default;

 private:
  std::vector<Rule> rules_;
};

}  // namespace yardwright
