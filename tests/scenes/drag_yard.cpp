#include <cmath>

#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

namespace yardwright::scenes {

namespace {

constexpr int legs = 4, bins_a_leg = 5;

double level_m(SitePoint at) {
  return 300 + 0.015 * at.y + 0.4 * std::sin(at.x / 23) * std::cos(at.y / 31) + 0.15 * std::sin(at.x / 7 + at.y / 5);
}

void add_cluster(SceneBuilder& yard, SitePoint centre) {
  const ItemId leg = yard.add("", Leg{.at = centre, .discharge_height_m = 32});
  for (int i = 0; i < bins_a_leg; ++i) {
    const SiteVector out = direction(Bearing::degrees(360.0 * i / bins_a_leg)) * 16;
    yard.spout(leg, yard.add("", Bin{.at = centre + out}));
  }
}

}  // namespace

Site drag_yard() {
  Site bare;
  bare.name = "Sixty items on forty acres";
  bare.lot = rectangular_lot(400, 400);
  bare.ground.levels = levels_of({{0, 0}, 1.0, 400, 400}, level_m);
  SceneBuilder yard{bare};
  for (int i = 0; i < legs; ++i) add_cluster(yard, {120.0 + 160 * (i % 2), 140.0 + 150 * (i / 2)});
  const ItemId dump = yard.add("", Receiving{.at = {200, 60}, .facing = Bearing::degrees(90)});
  const SitePath loop{{30, -20}, {30, 60}, {370, 60}, {370, -20}};
  yard.add("", Drive{.path = loop});
  yard.add("", Route{.path = loop, .stops = {dump}});
  yard.add("", Gate{.at = {30, 0}, .width_m = 12});
  yard.add("", Gate{.at = {370, 0}, .width_m = 12});
  yard.add("", Berm{.path = {{60, 350}, {340, 350}}});
  yard.add("", Swale{.path = {{60, 340}, {340, 340}}});
  yard.add("", OverheadLine{.path = {{0, 390}, {400, 390}}});
  yard.add("", Tank{.at = {350, 120}});
  yard.add("", Well{.at = {380, 380}});
  yard.add("", Dryer{.at = {200, 120}});
  yard.add("", Building{.at = {60, 120}});
  yard.add("", Building{.at = {340, 200}, .use = BuildingUse::dwelling});
  yard.add("", Pad{.outline = {{190, 200}, {215, 200}, {215, 225}, {190, 225}}, .level_m = 304});
  yard.add("", Scale{.at = {100, 60}, .facing = Bearing::degrees(90)});
  yard.add("", Cover{.outline = {{20, 40}, {380, 40}, {380, 330}, {20, 330}}});
  return yard.site();
}

Site million_cell_yard() {
  Site site = drag_yard();
  site.name = "Sixty items on a million cells";
  site.ground.levels = levels_of({{-300, -300}, 1.0, 1000, 1000}, level_m);
  return site;
}

}  // namespace yardwright::scenes
