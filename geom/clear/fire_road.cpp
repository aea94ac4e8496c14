#include "geom/clear/fire_road.hpp"

#include "geom/site/footprint.hpp"

namespace yardwright::clear {

std::optional<Finding> fire_road_finding(const Site& site, const RuleBook& rules) {
  const Item* widest = nullptr;
  double width_m = 0;
  for_each<Drive>(site, [&](const Item& item, const Drive& drive) {
    if (widest != nullptr && drive.width_m <= width_m) return;
    widest = &item;
    width_m = drive.width_m;
  });
  if (widest == nullptr) return std::nullopt;
  const Rule& rule = rules.at("clear.fire-road");
  Finding finding = judged(Question::clear, rule, Bound::at_least, width_m, {widest->id}, Verdict::caution);
  finding.title = finding.verdict == Verdict::pass ? "A fire engine finds a drive wide enough"
                                                   : "No drive is wide enough for a fire engine";
  finding.note =
      finding.verdict == Verdict::pass ? "" : "advice: many states exempt farm buildings; ask the fire marshal";
  finding.place = {place_of(widest->thing)};
  if (finding.verdict == Verdict::pass) return finding;
  Item wider = *widest;
  std::get<Drive>(wider.thing).width_m = rule.value;
  finding.mends.push_back(
      {"widen " + title_of(*widest), Quantity::length, rule.value - width_m, rule.value, {PutItem{wider}}});
  return finding;
}

}  // namespace yardwright::clear
