#include "geom/grow/later_ground.hpp"

#include <algorithm>
#include <limits>

#include "geom/clear/spacing.hpp"

namespace yardwright::grow {

namespace {

bool still_stands(const Item& earlier, const Item& later) {
  return earlier.phase < later.phase && !(earlier.gone_in && *earlier.gone_in <= later.phase);
}

struct Asker {
  const clear::Yard& yard;
  const std::vector<clear::Check>& checks;
  double beyond_m;

  /// Of two, with a margin below `below_m`. A tank's checks are asked with the tank second, so either way round.
  std::optional<clear::Gap> tightest(const clear::Solid& a, const clear::Solid& b, double below_m) const {
    std::optional<clear::Gap> best;
    for (const clear::Check& check : checks) {
      for (const bool turned : {false, true}) {
        auto gap = check.between(turned ? b : a, turned ? a : b, yard, below_m + beyond_m);
        if (!gap || gap->margin_m() - beyond_m >= below_m) continue;
        gap->required_m += beyond_m;
        below_m = gap->margin_m();
        best = std::move(gap);
      }
    }
    return best;
  }
};

}  // namespace

Site with_later(Site site, const std::vector<Item>& later) {
  site.items.insert(site.items.end(), later.begin(), later.end());
  return site;
}

std::vector<LaterGap> later_gaps(const Site& site, const std::vector<Item>& later, const DesignSurface& surface,
                                 const RuleBook& rules, double beyond_m) {
  const Site whole = with_later(site, later);
  const clear::Yard yard = clear::yard_of(whole, surface, rules);
  const std::vector<clear::Check> checks = clear::spacing_checks(rules);
  const Asker asker{yard, checks, beyond_m};
  std::vector<LaterGap> all;
  double least_kept_m = std::numeric_limits<double>::infinity();
  for (const clear::Solid& earlier : yard.solids) {
    if (earlier.item >= whole.items.data() + site.items.size()) break;  // the site's come first
    std::optional<LaterGap> worst;
    for (const clear::Solid& planned : yard.solids) {
      if (!still_stands(*earlier.item, *planned.item)) continue;
      const double below_m = worst ? worst->gap.margin_m() : std::max(least_kept_m, 0.0);
      if (auto gap = asker.tightest(earlier, planned, below_m))
        worst = LaterGap{earlier.item->id, planned.item->id, std::move(*gap)};
    }
    if (!worst) continue;
    least_kept_m = std::min(least_kept_m, worst->gap.margin_m());
    all.push_back(std::move(*worst));
  }
  std::ranges::stable_sort(all, {}, [](const LaterGap& one) { return one.gap.margin_m(); });
  if (all.size() > 1) {
    std::erase_if(all,
                  [&](const LaterGap& one) { return clear::keeps(one.gap) && one.earlier != all.front().earlier; });
  }
  return all;
}

}  // namespace yardwright::grow
