#include <algorithm>

#include "geom/clear/line_setback.hpp"
#include "geom/grow/keep_off.hpp"
#include "geom/grow/region_where.hpp"
#include "geom/shape/innermost.hpp"

namespace yardwright::grow {

namespace {

constexpr double samples_apart_m = 1.0;

/// The newcomer with the spout that fills it, where a leg stands: a bin that no spout fills is asked for more.
Site with_spout(const Newcomer& newcomer) {
  Site site = newcomer.site;
  site.items.push_back(newcomer.item);
  const auto leg = std::ranges::find_if(site.items, [](const Item& item) { return as<Leg>(item) != nullptr; });
  if (leg == site.items.end() || !is_filled_by_spout(newcomer.item.thing)) return site;
  const Spout spout{.from = leg->id, .to = newcomer.item.id};
  site.items.push_back({next_id(site), "", newcomer.item.phase, {}, spout});
  return site;
}

/// How far the ground can lie above that under a line, anywhere.
double greatest_rise_m(const DesignSurface& surface) {
  if (!surface.known()) return 0;
  const auto [low_m, high_m] = std::ranges::minmax(surface.design.values());
  return double(high_m) - double(low_m);
}

double farthest_corner_m(const Outline& shape) {
  if (const Disc* disc = std::get_if<Disc>(&shape)) return distance(disc->centre, {}) + disc->radius_m;
  double farthest_m = 0;
  for (const SitePoint& corner : std::get<Polygon>(shape).outer)
    farthest_m = std::max(farthest_m, distance(corner, {}));
  return farthest_m;
}

class LineArea {
 public:
  LineArea(const Newcomer& newcomer, const clear::Yard& yard, const clear::Check& check, const Item& line)
      : newcomer_{newcomer}, yard_{yard}, check_{check}, line_{line}, path_{as<OverheadLine>(line)->path} {
    const double rise_m = greatest_rise_m(yard.surface);
    looks_m_ = clear::most_asked_m(newcomer.item.thing, *as<OverheadLine>(line), rise_m, yard.rules) +
               farthest_corner_m(newcomer.shape) + samples_apart_m;
  }

  std::optional<KeepOff> keep_off() const {
    const Box lot = box_of(newcomer_.site.lot.corners), near = grown(box_of(path_), looks_m_);
    const Box box{{std::max(lot.low.x, near.low.x), std::max(lot.low.y, near.low.y)},
                  {std::min(lot.high.x, near.high.x), std::min(lot.high.y, near.high.y)}};
    if (path_.size() < 2 || box.high.x <= box.low.x || box.high.y <= box.low.y) return std::nullopt;
    Region area = region_where(samples_over(box, samples_apart_m), [&](SitePoint at) { return falls_short(at); });
    const auto deepest = innermost(area, samples_apart_m);
    const auto gap = deepest ? gap_at(deepest->at) : std::nullopt;
    if (!gap) return std::nullopt;
    return KeepOff{gap->rule->id, line_.id, check_.breaks, gap->required_m, gap->worse, std::move(area)};
  }

 private:
  std::optional<clear::Gap> gap_at(SitePoint place) const {
    const Item there{newcomer_.item.id, "", newcomer_.item.phase, {}, newcomer_.at(place)};
    const auto solid = clear::solid_of(there);
    return solid ? check_.to_line(*solid, line_, yard_) : std::nullopt;
  }

  bool falls_short(SitePoint place) const {
    if (nearest_on_path(path_, place).distance_m > looks_m_) return false;
    const auto gap = gap_at(place);
    return gap && !clear::keeps(*gap);
  }

  const Newcomer& newcomer_;
  const clear::Yard& yard_;
  const clear::Check& check_;
  const Item& line_;
  const SitePath& path_;
  double looks_m_ = 0;
};

}  // namespace

KeepOffs off_lines(const Newcomer& newcomer) {
  const Site site = with_spout(newcomer);
  const clear::Yard yard{site, newcomer.answers.surface, newcomer.rules, {}, {}};
  KeepOffs all;
  for (const clear::Check& check : clear::line_checks(yard)) {
    for_each<OverheadLine>(site, [&](const Item& line, const OverheadLine&) {
      if (auto off = LineArea{newcomer, yard, check, line}.keep_off()) all.push_back(std::move(*off));
    });
  }
  return all;
}

}  // namespace yardwright::grow
