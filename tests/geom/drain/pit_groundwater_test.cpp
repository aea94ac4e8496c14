#include "geom/drain/pit_groundwater.hpp"

#include <catch2/catch.hpp>

#include "geom/io/rule_book.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

Site yard(double groundwater_m) {
  Site site;
  site.ground.levels = ground_of(20, 20, 1, [](SitePoint) { return 100.0; });
  site.ground.groundwater_depth_m = groundwater_m;
  yardwright::Pit pit{.at = {10, 10}};
  pit.body.width_m = 3;
  pit.body.length_m = 4;
  pit.body.depth_m = 3;
  site.items.push_back({{1}, "", 0, {}, pit});
  return site;
}

Findings findings(const Site& site, RuleBook rules = shipped_rule_book()) {
  return judge_groundwater(site, site.items.front(), design_surface(site), rules);
}

}  // namespace

TEST_CASE("Groundwater that is not known judges no pit") { CHECK(findings(yard(0)).empty()); }

// By hand, for a pit 3 m by 4 m and 3 m deep with walls of 8 in (0.2032 m) and a floor of 12 in (0.3048 m): outside 3.4064 by
// 4.4064 m = 15.010 m2; concrete 15.010 * 3.3048 - 12 * 3 = 13.605 m3 at 2403 kg/m3 = 32,693 kg. Water 1 m down reaches
// 2.3048 m up its side: 15.010 * 2.3048 * 999.55 = 34,579 kg. 32,693 / 34,579 = 0.945.
TEST_CASE("An empty pit in high groundwater is judged by its weight against the water it displaces") {
  const Findings told = findings(yard(1));
  REQUIRE(told.size() == 2);
  CHECK(told[0].measured == Approx(2));
  CHECK(told[0].verdict == Verdict::caution);
  CHECK(told[1].measured == Approx(0.945).epsilon(0.002));
  CHECK(told[1].verdict == Verdict::fail);
}

TEST_CASE("Groundwater far under a pit neither seeps in nor lifts it") {
  for (const Finding& finding : findings(yard(4))) CHECK(finding.verdict == Verdict::pass);
}
