#include "geom/pace/capacity_mends.hpp"

#include <algorithm>
#include <optional>

#include "geom/pace/bin_volume.hpp"

namespace yardwright::pace {

namespace {

constexpr double diameter_step_m = 3 * foot_m;  // steel bins come in steps of 3 ft; common practice, no source
constexpr double ring_m = 32 * 0.0254;          // and in rings of about 32 in; common practice, no source
constexpr double widest_m = 120 * foot_m;
constexpr int most_rings = 15;

GrainVolume held(const Bin& bin, const Grain& grain) { return heaped(room_of(bin), grain).total; }

/// The first of ever larger bins that holds the wanted volume; `enlarge` tells when it cannot be larger.
template <class Enlarge>
std::optional<Bin> large_enough(Bin bin, const Grain& grain, double wanted_m3, Enlarge enlarge) {
  while (held(bin, grain).as_cubic_metres() < wanted_m3) {
    if (!enlarge(bin)) return std::nullopt;
  }
  return bin;
}

void keep_least(std::optional<Mend>& least, Mend mend) {
  if (!least || mend.change < least->change) least = std::move(mend);
}

}  // namespace

std::vector<Mend> capacity_mends(const Site& site, const Catalogs& catalogs, GrainVolume lacking, double pack_ratio) {
  std::optional<Mend> wider, taller;
  for (const Item& item : site.items) {
    const Bin* bin = as<Bin>(item);
    const Grain* grain = bin == nullptr ? nullptr : find(catalogs.grains, bin->grain);
    if (grain == nullptr || item.phase == 0 || bin->use != BinUse::dry_store) continue;
    const double wanted_m3 = held(*bin, *grain).as_cubic_metres() + lacking.as_cubic_metres() / pack_ratio;
    const auto with = [&](const Bin& larger) {
      Item changed = item;
      changed.thing = larger;
      return Edits{PutItem{changed}};
    };
    const auto widened = large_enough(*bin, *grain, wanted_m3, [](Bin& larger) {
      larger.diameter_m += diameter_step_m;
      return larger.diameter_m <= widest_m;
    });
    const auto raised = large_enough(*bin, *grain, wanted_m3, [&](Bin& larger) {
      larger.eave_height_m += ring_m;
      return larger.eave_height_m <= bin->eave_height_m + most_rings * ring_m;
    });
    if (widened)
      keep_least(wider, {"make " + title_of(item) + " wider", Quantity::length, widened->diameter_m - bin->diameter_m,
                         widened->diameter_m, with(*widened)});
    if (raised)
      keep_least(taller, {"make " + title_of(item) + " taller at its eave", Quantity::length,
                          raised->eave_height_m - bin->eave_height_m, raised->eave_height_m, with(*raised)});
  }
  std::vector<Mend> mends;
  if (wider) mends.push_back(*wider);
  if (taller) mends.push_back(*taller);
  return mends;
}

}  // namespace yardwright::pace
