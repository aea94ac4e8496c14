// What the tests and the trial of proposals share: briefs of the demo yards, and a search that only throws, to be beaten.
#pragma once

#include <memory>

#include "geom/grow/proposals.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "geom/units/grain_volume.hpp"

namespace yardwright::grow {

inline GrowthBrief brief_for(double wanted_bu) {
  GrowthBrief brief;
  brief.wanted_m3 = GrainVolume::bushels(wanted_bu).as_cubic_metres();
  constexpr double ft = 0.3048;
  brief.bins = {{30 * ft, 24 * ft}, {36 * ft, 24 * ft}, {42 * ft, 29 * ft}, {48 * ft, 29 * ft}};
  brief.discharge_m = {140 * ft, 150 * ft, 160 * ft};
  return brief;
}

inline std::unique_ptr<GrowthTask> task_of(const Site& site, const GrowthBrief& brief) {
  return std::make_unique<GrowthTask>(site, brief, shipped_price_book(), shipped_catalogs());
}

/// Of what was kept, storage against money: as a share of all that is wanted for nothing. `money` is where it counts no more.
inline double front_share(const std::vector<LayoutTrial>& kept, const GrowthBrief& brief, double money) {
  std::vector<Aims> points;
  for (const LayoutTrial& one : kept) {
    const double stored_ratio = std::min(1.0, one.measures.stored_m3 / brief.wanted_m3);
    points.push_back({1 - stored_ratio, one.measures.cost / money});
  }
  return hypervolume(points, {1, 1});
}

/// A number of bins, their sizes, the legs' heights and every place thrown evenly, the places on the ground where a bin of that size
/// can stand in the yard as it is.
inline Layout thrown_layout(const GrowthTask& task, const LayoutDrafts& drafts, int most_bins, Dice& dice) {
  const std::size_t choice = dice.below(drafts.leg_choices().size());
  Layout layout{drafts.leg_choices()[choice], {}};
  const std::size_t count = 1 + dice.below(static_cast<std::size_t>(most_bins));
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t size = dice.below(task.brief.bins.size());
    const std::vector<SitePoint>& places = drafts.ground(choice, size).places;
    if (!places.empty()) layout.stands.push_back({size, places[dice.below(places.size())]});
  }
  return layout;
}

}  // namespace yardwright::grow
