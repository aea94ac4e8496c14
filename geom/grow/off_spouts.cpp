#include <algorithm>

#include "geom/grow/keep_off.hpp"
#include "geom/grow/region_where.hpp"
#include "geom/reach/solid.hpp"
#include "geom/reach/spout_line.hpp"

namespace yardwright::grow {

namespace {

constexpr double samples_apart_m = 0.5;

double farthest_corner_m(const Outline& shape) {
  const Box box = box_of(shape);
  return std::max(distance(box.low, {}), distance(box.high, {}));
}

}  // namespace

bool is_under_a_spout(const Newcomer& newcomer, SitePoint place) {
  const DesignSurface& surface = newcomer.answers.surface;
  const auto solid = reach::solid_of({newcomer.item.id, "", 0, {}, newcomer.at(place)}, surface);
  const double clear_m = newcomer.rules.at("reach.clear-of-roofs").value;
  return solid && std::ranges::any_of(newcomer.site.items, [&](const Item& item) {
           const Spout* spout = as<Spout>(item);
           const auto line = spout != nullptr ? reach::spout_line(newcomer.site, *spout, surface) : std::nullopt;
           return line && comes_within(*line, *solid, clear_m);
         });
}

KeepOffs off_spouts(const Newcomer& newcomer) {
  KeepOffs all;
  const DesignSurface& surface = newcomer.answers.surface;
  const Rule& rule = newcomer.rules.at("reach.clear-of-roofs");
  const double near_m = farthest_corner_m(newcomer.shape) + rule.value;
  if (!reach::solid_of(newcomer.item, surface)) return all;
  for_each<Spout>(newcomer.site, [&](const Item& item, const Spout& spout) {
    const auto line = reach::spout_line(newcomer.site, spout, surface);
    if (!line) return;
    Region area = region_where(samples_over(grown(box_of({line->from, line->to}), near_m), samples_apart_m),
                               [&](SitePoint place) {
                                 if (nearest_on_segment(line->from, line->to, place).distance_m > near_m) return false;
                                 const Item there{newcomer.item.id, "", 0, {}, newcomer.at(place)};
                                 return comes_within(*line, *reach::solid_of(there, surface), rule.value);
                               });
    if (!area.empty())
      all.push_back({rule.id, item.id, "stands too near under", rule.value, Verdict::fail, std::move(area)});
  });
  return all;
}

}  // namespace yardwright::grow
