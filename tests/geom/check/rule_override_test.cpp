// A rule that a site sets as its own is what the site is judged by: every rule of the book, one at a time.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "geom/check/live_check.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::scenes;

namespace {

constexpr double ft = 0.3048, gallon = 231 * 0.0254 * 0.0254 * 0.0254;

/// Rules that nothing is measured against: what they do to the rules named beside them is what follows.
const std::map<std::string_view, std::string_view> works_through{{"drain.pit-wall", "drain.pit-uplift"},
                                                                 {"drain.pit-floor", "drain.pit-uplift"},
                                                                 {"clear.line-probe", "clear.line-portable"},
                                                                 {"clear.line-slope", "clear.line-portable"},
                                                                 {"clear.line-ground", "clear.line-portable"},
                                                                 {"clear.line-table-foot", "clear.line-portable"},
                                                                 {"clear.leg-head", "clear.line-permanent"},
                                                                 {"clear.working-width", "clear.fan-room"},
                                                                 {"clear.lp-single-capacity", "clear.lp-single"},
                                                                 {"clear.lp-single-apart", "clear.lp-single"},
                                                                 {"pace.pack", "pace.capacity"},
                                                                 {"turn.grade-length", "turn.grade"}};

Site tank_yard(double gallons, bool underground, int tanks = 1) {
  SceneBuilder yard{Site{}};
  for (int i = 0; i < tanks; ++i)
    yard.add("", Tank{.at = {0, 12.0 * i}, .water_capacity_m3 = gallons * gallon, .underground = underground});
  yard.add("", Building{.at = {14, 0}});
  return yard.site();
}

Site ammonia_yard(double gallons) {
  SceneBuilder yard{Site{.lot = rectangular_lot(100, 100)}};
  yard.add("", Tank{.at = {20, 20}, .water_capacity_m3 = gallons * gallon, .contents = TankContents::ammonia});
  yard.add("", Well{.at = {40, 20}});
  return yard.site();
}

/// A bin, a leg and a shed near a line; the head of the leg lies by a hand under what the line clears.
Site line_yard() {
  SceneBuilder yard{Site{}};
  yard.add("", OverheadLine{.path = {{0, 0}, {200, 0}}, .lowest_conductor_m = 18.4 * ft, .voltage_v = 69e3});
  yard.add("", Bin{.at = {40, 30}});
  yard.add("", Building{.at = {90, 0}});
  yard.add("", Leg{.at = {150, 3}, .discharge_height_m = 0.1});
  return yard.site();
}

Site yard_of(std::vector<Thing> things) {
  SceneBuilder yard{Site{.lot = rectangular_lot(100, 100)}};
  for (Thing& thing : things) yard.add("", std::move(thing));
  return yard.site();
}

OverheadLine line_of(double volts) { return {.path = {{0, 50}, {100, 50}}, .voltage_v = volts}; }

Site lifted_line_yard() {
  SceneBuilder yard{Site{}};
  yard.add("", OverheadLine{.path = {{0, 0}, {200, 0}}, .lowest_conductor_m = 45 * ft});
  yard.add("", Leg{.at = {150, 3}, .discharge_height_m = 20 * ft});
  return yard.site();
}

/// A truck through a stand, a door and a gate, over a bank, past a pit and under a conveyor.
Site way_yard() {
  Site bare;
  bare.ground.levels =
      levels_of({{-20, -40}, 1, 240, 80}, [](SitePoint at) { return at.x > 150 ? 0.14 * (at.x - 150) : 0.0; });
  SceneBuilder yard{bare};
  const Bearing east = Bearing::degrees(90);
  const ItemId dump = yard.add("", Receiving{.at = {30, 0}, .facing = east, .width_m = 8, .door_width_m = 6});
  yard.add("", OverheadHolding{.at = {60, 0}, .facing = east, .underside_height_m = 6, .stand_width_m = 6});
  yard.add("", Gate{.at = {80, 0}, .facing = east, .width_m = 8});
  yard.add("", Pit{.at = {95, 6}});
  yard.add("", Conveyor{.path = {{110, -20}, {110, 20}}, .start_height_m = 8, .end_height_m = 8});
  yard.add("", Bin{.at = {130, 9}});
  yard.add("", Route{.path = {{0, 0}, {200, 0}}, .vehicle = "grain-truck-tandem", .stops = {dump}});
  yard.add("", Route{.path = {{0, -30}, {60, -30}, {60, -5}}, .vehicle = "wb-67"});
  yard.add("", Drive{.path = {{0, 0}, {200, 0}}});
  return yard.site();
}

/// Bins of both floors and of wet holding, and open pits, in a hollow and on a side hill, filled and not.
Site wet_yard() {
  Site bare;
  bare.ground.levels =
      levels_of({{0, 0}, 1, 160, 120}, [](SitePoint at) { return 10 + 0.02 * at.x - (at.x > 100 ? 0.3 : 0.0); });
  bare.ground.groundwater_depth_m = 1;
  SceneBuilder yard{bare};
  yard.add("", Bin{.at = {40, 40}, .floor = BinFloor::flat_channels});
  yard.add("", Bin{.at = {70, 40}, .use = BinUse::wet_holding});
  yard.add("", Pit{.at = {80, 80}});
  yard.add("", Dryer{.at = {40, 80}});
  yard.add("", Dryer{.at = {60, 80}});
  yard.add("", Building{.at = {60, 100}, .use = BuildingUse::dwelling});
  yard.add("", Drive{.path = {{0, 10}, {160, 10}}});
  yard.add("", TileLine{.path = {{140, 60}, {110, 60}}});
  yard.add("", CatchBasin{.at = {140, 60}});
  return yard.site();
}

std::vector<Site> yards() {
  std::vector<Site> all{line_yard(), lifted_line_yard(), way_yard(), wet_yard(), old_yard()};
  for (const double gallons : {100.0, 300.0, 1000.0, 10e3, 50e3, 80e3, 100e3, 150e3, 500e3, 2e6})
    all.push_back(tank_yard(gallons, false, 2));
  all.push_back(tank_yard(1000, false));
  all.push_back(tank_yard(100, false));
  all.push_back(yard_of({Well{.at = {50, 8}}}));
  all.push_back(yard_of({line_of(300e3), line_of(450e3), line_of(700e3), line_of(950e3)}));
  for (const double gallons : {300.0, 1000.0, 10e3}) all.push_back(tank_yard(gallons, true));
  for (const double gallons : {1000.0, 5000.0}) all.push_back(ammonia_yard(gallons));
  return all;
}

struct Told {
  Findings findings;
  std::vector<double> strips_m;
};

Told told(const Site& site) {
  LiveCheck live{shipped_catalogs()};
  live.ask(site);
  Told all{all_findings(live.answers()), {}};
  for (const clear::LineStrip& strip : live.answers().clear->strips) all.strips_m.push_back(strip.half_width_m);
  return all;
}

std::vector<double> required_by(const Told& all, std::string_view rule) {
  std::vector<double> required;
  for (const Finding& one : all.findings) {
    if (one.rule == rule) required.push_back(one.required);
  }
  return required;
}

bool has(const std::vector<double>& values, double wanted) {
  return std::ranges::any_of(values, [wanted](double one) { return std::abs(one - wanted) < 1e-9; });
}

/// What is measured by a rule, or asked.
std::vector<std::pair<double, double>> said_of(const Told& all, std::string_view rule) {
  std::vector<std::pair<double, double>> said;
  for (const Finding& one : all.findings) {
    if (one.rule == rule) said.push_back({one.measured, one.required});
  }
  return said;
}

bool follows(const Told& before, const Told& after, const Rule& rule, double own) {
  if (rule.id.starts_with("clear.equipment")) return has(after.strips_m, own) && !has(before.strips_m, own);
  const auto through = works_through.find(rule.id);
  if (through != works_through.end()) return said_of(before, through->second) != said_of(after, through->second);
  const std::vector<double> now = required_by(after, rule.id), was = required_by(before, rule.id);
  if (has(now, own) && !has(was, own)) return true;
  return std::ranges::any_of(
      was, [&](double one) { return has(now, one - rule.value + own) && !has(was, one - rule.value + own); });
}

}  // namespace

TEST_CASE("A site's own value for any rule of the book is what some finding then asks") {
  const std::vector<Site> all = yards();
  std::vector<Told> before;
  for (const Site& site : all) before.push_back(told(site));
  for (const Rule& rule : shipped_catalogs().rules.rules()) {
    if (rule.id.starts_with("drain.storm")) continue;      // asked by the storm alone: storm_test.cpp
    if (rule.id.starts_with("drain.diversion")) continue;  // shapes a mend: diversion_test.cpp
    if (rule.id.starts_with("grow.")) continue;            // shapes a region: allowed_region_test.cpp
    INFO(rule.id);
    // More than the book's own, and less, since some rules speak only where they are broken and others where they are kept.
    const double more = rule.value > 0 ? rule.value * 1.5 : 1, less = rule.value / 2;
    bool followed = false;
    for (std::size_t i = 0; i < all.size() && !followed; ++i) {
      for (const double own : {more, less}) {
        const Site set = yardwright::apply(all[i], SetRule{{rule.id, own, Basis::local, "set here"}});
        followed = followed || follows(before[i], told(set), rule, own);
      }
    }
    CHECK(followed);
  }
}
