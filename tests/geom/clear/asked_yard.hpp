// What the tests of Clear share: a yard out of things in feet, asked, and its findings by id.
#pragma once

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/clear/clear.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/geom/kept.hpp"

namespace yardwright::clear {

inline constexpr double ft = 0.3048;
inline constexpr double gallon = 231 * 0.0254 * 0.0254 * 0.0254;

inline Site yard_with(std::vector<Thing> things) {
  Site site;
  for (Thing& thing : things) site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site;
}

inline Answer asked(const Site& site) { return ask(site, design_surface(site), shipped_catalogs()); }

inline const Finding* finding(const Answer& answer, std::string_view id) {
  const auto found = std::ranges::find(answer.findings, id, &Finding::id);
  return found == answer.findings.end() ? nullptr : &*found;
}

/// Of one finding; "silent" where there is none with this id.
inline std::string verdict(const Answer& answer, std::string_view id) {
  const Finding* found = finding(answer, id);
  return found == nullptr ? "silent" : std::string{names_of(Verdict{})[static_cast<std::size_t>(found->verdict)]};
}

inline Bin bin_at(double east_ft, double north_ft, double diameter_ft = 36) {
  Bin bin;
  bin.at = {east_ft * ft, north_ft * ft};
  bin.diameter_m = diameter_ft * ft;
  return bin;
}

/// A tank 10 ft long and 4 ft wide along north, its east side at `east_side_ft`.
inline Tank tank_at(double east_side_ft, double north_ft, double gallons,
                    TankContents contents = TankContents::lp_gas) {
  return {.at = {(east_side_ft - 2) * ft, north_ft * ft},
          .length_m = 10 * ft,
          .diameter_m = 4 * ft,
          .water_capacity_m3 = gallons * gallon,
          .contents = contents};
}

/// 40 by 40 ft, its west side at `west_side_ft`.
inline Building building_at(double west_side_ft, double north_ft, BuildingUse use = BuildingUse::farm_building) {
  return {.at = {(west_side_ft + 20) * ft, north_ft * ft}, .length_m = 40 * ft, .width_m = 40 * ft, .use = use};
}

/// Every mend of every finding of that rule, applied and asked again, is told to pass.
inline void check_mends(const Site& site, std::string_view id, std::size_t at_least) {
  const Answer before = asked(site);
  const Finding* found = finding(before, id);
  INFO(id);
  REQUIRE(found != nullptr);
  CHECK(found->mends.size() >= at_least);
  for (const Mend& mend : found->mends) {
    INFO(mend.action << " by " << mend.change);
    CHECK(is_kept(asked(yardwright::apply(site, mend.edits)).findings, *found));
  }
}

}  // namespace yardwright::clear
