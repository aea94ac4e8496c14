// Yards of one route with one other thing, and what Turn says of them: for the tests of its findings and of their mends.
#pragma once

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright::route_yard {

inline constexpr ItemId route_id{1}, thing_id{2};

/// A route with one other item, on ground that is not known.
inline Site yard(Route route, std::optional<Thing> thing = {}) {
  Site site;
  site.items.push_back({route_id, "Way", 0, std::nullopt, std::move(route)});
  if (thing) site.items.push_back({thing_id, "Thing", 0, std::nullopt, *thing});
  return site;
}

inline Findings asked(const Site& site) { return turn::ask(site, design_surface(site), shipped_catalogs()).findings; }

inline const Finding& finding(const Findings& findings, std::string_view rule) {
  for (const Finding& one : findings) {
    if (one.rule == rule) return one;
  }
  FAIL("no finding of " << rule);
  return findings.front();
}

inline constexpr std::string_view advice = "turn.clearance-advice", advised = "turn.clearance";

/// Whether a finding says that a rule is kept. Advice that is kept is told by the rule beyond which it goes, and a caution of
/// advice says that this rule is kept.
inline bool says_kept(const Finding& after, std::string_view rule) {
  if (rule == advice) return after.rule == advised && after.verdict == Verdict::pass;
  if (rule == advised && after.rule == advice) return after.verdict == Verdict::caution;
  return after.rule == rule && after.verdict == Verdict::pass;
}

/// Every mend of a rule's finding, applied to the site, makes that rule pass; there is at least one. A finding that is no
/// longer told is no pass: the mend must not take away what is asked.
inline void every_mend_passes(const Site& site, std::string_view rule) {
  const Finding failing = finding(asked(site), rule);
  REQUIRE(failing.verdict != Verdict::pass);
  REQUIRE_FALSE(failing.mends.empty());
  for (const Mend& mend : failing.mends) {
    INFO(mend.action << " by " << mend.change);
    const Findings again = asked(apply(site, mend.edits));
    CHECK(std::ranges::any_of(again, [rule](const Finding& after) { return says_kept(after, rule); }));
    CHECK(std::ranges::none_of(
        again, [rule](const Finding& after) { return after.rule == rule && after.verdict != Verdict::pass; }));
  }
}

inline bool tells(const Findings& findings, std::string_view rule) {
  return std::ranges::any_of(findings, [rule](const Finding& one) { return one.rule == rule; });
}

inline Route straight(std::string vehicle, double length_m = 60) {
  return {.path = {{0, 0}, {length_m, 0}}, .vehicle = std::move(vehicle)};
}

/// A drive-through across the way at 30 m, facing east.
inline Receiving drive_through() { return {.at = {30, 0}, .facing = Bearing::degrees(90)}; }

inline Site on_slope(Site site, double grade) {
  GridFrame frame{{-10, -10}, 1, 120, 20};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(frame.centre(frame.cell_at_offset(i)).x * grade));
  site.ground.levels = LevelGrid{frame, levels};
  return site;
}

}  // namespace yardwright::route_yard
