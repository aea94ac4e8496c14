#include "geom/grow/newcomer.hpp"

namespace yardwright::grow {

Thing Newcomer::at(SitePoint place) const { return moved(item.thing, place - place_of(item.thing)); }

std::optional<Newcomer> newcomer(const Site& site, const Answers& answers, const RuleBook& rules, const Thing& thing,
                                 int phase) {
  const Thing here = moved(thing, SitePoint{} - place_of(thing));
  const auto shape = footprint(here);
  if (!shape || path_of(thing) != nullptr) return std::nullopt;
  return Newcomer{site, answers, rules, {next_id(site), "", phase, {}, here}, *shape, turned_back(*shape, {})};
}

bool is_filled_by_spout(const Thing& thing) {
  return std::holds_alternative<Bin>(thing) || std::holds_alternative<OverheadHolding>(thing);
}

}  // namespace yardwright::grow
