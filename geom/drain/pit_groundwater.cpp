#include "geom/drain/pit_groundwater.hpp"

#include <algorithm>

#include "geom/drain/uplift.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

Finding seepage(const Item& item, double over_floor_m, const RuleBook& rules) {
  Finding finding = judged(Question::drain, rules.at("drain.pit-seepage"), Bound::at_most, std::max(0.0, over_floor_m),
                           {item.id}, Verdict::caution);
  finding.title = finding.verdict == Verdict::pass ? "Groundwater stays under the floor of " + title_of(item)
                                                   : "Groundwater stands over the floor of " + title_of(item);
  finding.note =
      "by the site's highest groundwater; a pit is never quite tight, so that it needs a sump and a pump that runs "
      "without "
      "being watched";
  finding.place = {place_of(item.thing)};
  return finding;
}

Finding lifting(const Item& item, const Uplift& uplift, const RuleBook& rules) {
  Finding finding = judged(Question::drain, rules.at("drain.pit-uplift"), Bound::at_least,
                           std::min(uplift.safety_ratio(), 100.0), {item.id});
  finding.title = finding.verdict == Verdict::pass
                      ? "Groundwater cannot lift " + title_of(item) + " while it is empty"
                      : "Groundwater can lift the pit of " + title_of(item) + " while it is empty";
  finding.note =
      "weight of its concrete, of the thickness in the rules, against the water it displaces; without friction and "
      "without "
      "what stands on it. Never pump it dry before the groundwater is known; a licensed engineer decides";
  finding.place = {place_of(item.thing)};
  return finding;
}

}  // namespace

Findings judge_groundwater(const Site& site, const Item& item, const DesignSurface& surface, const RuleBook& rules) {
  const PitBody* body = pit_body(item.thing);
  if (body == nullptr || site.ground.groundwater_depth_m <= 0) return {};
  const SitePoint at = place_of(item.thing);
  const double ground_m = surface.level_m(at);
  const double water_m = surface.existing_level_m(at) - site.ground.groundwater_depth_m;
  const double wall_m = rules.at("drain.pit-wall").value, floor_m = rules.at("drain.pit-floor").value;
  const PitShell shell{body->width_m, body->length_m, body->depth_m + floor_m, wall_m, floor_m};
  const Uplift uplift = uplift_of(shell, SoilAndWater{.water_depth_m = std::max(0.0, ground_m - water_m)});
  return {seepage(item, water_m - (ground_m - body->depth_m), rules), lifting(item, uplift, rules)};
}

}  // namespace yardwright::drain
