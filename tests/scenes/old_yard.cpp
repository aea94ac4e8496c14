#include <cmath>

#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"
#include "tests/scenes/scenes.hpp"

namespace yardwright::scenes {

namespace {

SitePoint feet(double east, double north) { return {east * ft, north * ft}; }

SitePath feet_path(std::initializer_list<SitePoint> corners) {
  SitePath path;
  for (const SitePoint& corner : corners) path.push_back(feet(corner.x, corner.y));
  return path;
}

/// A yard that leans gently south, a hill behind it, and the hollow in which the boot and the dump were dug.
double level_m(SitePoint at) {
  const double east = at.x / ft, north = at.y / ft;
  const double yard = 0.02 * north - 0.003 * east;
  const double hill = north > 340 ? 0.11 * (north - 340) : 0.0;
  const double away = std::hypot(east - 300, north - 215) / 60;
  const double hollow = -2.6 * std::exp(-away * away);
  return (900 + yard + hill + hollow) * ft;
}

Site bare() {
  Site site;
  site.name = "Alder Slope, old yard";
  site.title = {"R. and M. Tilsen (invented)", "Alder Slope (invented)", "", ""};
  site.units = UnitSystem::us;
  site.lot = rectangular_lot(620 * ft, 520 * ft);
  site.lot.edges = {LotEdge::road, LotEdge::neighbour, LotEdge::own_field, LotEdge::neighbour};
  site.ground.levels = levels_of({{-30, -30}, 1.0, 250, 260}, level_m);
  site.ground.file = "old-yard-ground.tif";
  site.ground.source = "invented";
  site.phases = {"today", "the next bin"};
  const double harvest_m3 = GrainVolume::bushels(110000).as_cubic_metres();
  site.rule_overrides = {{"pace.capacity", harvest_m3, Basis::local, "the corn of a good year (invented)"}};
  site.storm.rain_m = 5 * 0.0254;
  site.storm.two_year_rain_m = 3 * 0.0254;
  for (const auto& [years, rain_in] :
       {std::pair{2.0, 3.0}, {5.0, 3.8}, {10.0, 4.3}, {25.0, 5.0}, {50.0, 5.6}, {100.0, 6.3}})
    site.storm.table.rows.push_back({years, rain_in * 0.0254});
  return site;
}

void add_bins(SceneBuilder& yard, ItemId leg) {
  const ItemId north_1 =
      yard.add("North 1", Bin{.at = feet(258, 288), .diameter_m = 36 * ft, .eave_height_m = 24 * ft});
  const ItemId north_2 =
      yard.add("North 2", Bin{.at = feet(314, 292), .diameter_m = 36 * ft, .eave_height_m = 24 * ft});
  const ItemId west = yard.add(
      "West",
      Bin{.at = feet(250, 232), .diameter_m = 30 * ft, .eave_height_m = 21 * ft, .floor = BinFloor::flat_channels});
  const ItemId wet =
      yard.add("Wet bin",
               Bin{.at = feet(350, 250), .diameter_m = 24 * ft, .eave_height_m = 18 * ft, .use = BinUse::wet_holding});
  for (const ItemId bin : {north_1, north_2, west}) yard.spout(leg, bin);
  yard.spout(leg, wet, GrainState::wet);
  const ItemId next =
      yard.add("Next bin", Bin{.at = feet(388, 302), .diameter_m = 48 * ft, .eave_height_m = 29 * ft}, 1);
  yard.spout(leg, next, GrainState::dry, 1);
}

void add_traffic(SceneBuilder& yard) {
  const ItemId way_in =
      yard.add("West gate", Gate{.at = feet(60, 0), .facing = Bearing::degrees(0), .width_m = 30 * ft});
  const ItemId way_out =
      yard.add("East gate", Gate{.at = feet(560, 0), .facing = Bearing::degrees(180), .width_m = 30 * ft});
  const ItemId dump = yard.add("Dump", Receiving{.at = feet(300, 190),
                                                 .facing = Bearing::degrees(90),
                                                 .length_m = 40 * ft,
                                                 .width_m = 18 * ft,
                                                 .height_m = 17 * ft,
                                                 .door_width_m = 10 * ft,
                                                 .door_height_m = 13.5 * ft,
                                                 .clear_height_m = 15 * ft});
  const SitePath loop = feet_path({{60, -40}, {60, 190}, {560, 190}, {560, -40}});
  yard.add("Loop", Drive{.path = loop, .width_m = 14 * ft, .corner_radius_m = 45 * ft});
  yard.add("Semi through the dump",
           Route{.path = loop, .vehicle = "wb-67", .corner_radius_m = 45 * ft, .stops = {way_in, dump, way_out}});
}

void add_neighbours(SceneBuilder& yard) {
  yard.add("Dryer", Dryer{.at = feet(410, 240),
                          .facing = Bearing::degrees(90),
                          .length_m = 28 * ft,
                          .width_m = 9 * ft,
                          .height_m = 20 * ft,
                          .inlet_height_m = 20 * ft});
  yard.add("Control room", Building{.at = feet(372, 214),
                                    .length_m = 12 * ft,
                                    .width_m = 12 * ft,
                                    .height_m = 9 * ft,
                                    .use = BuildingUse::control_room});
  yard.add("LP tank", Tank{.at = feet(394, 226), .facing = Bearing::degrees(90)});
  yard.add("Machine shed", Building{.at = feet(520, 150),
                                    .facing = Bearing::degrees(90),
                                    .length_m = 60 * ft,
                                    .width_m = 40 * ft,
                                    .height_m = 16 * ft});
  yard.add("House", Building{.at = feet(70, 420),
                             .facing = Bearing::degrees(90),
                             .length_m = 50 * ft,
                             .width_m = 30 * ft,
                             .height_m = 22 * ft,
                             .use = BuildingUse::dwelling});
  yard.add("Well", Well{.at = feet(120, 395)});
  yard.add("Farm line", OverheadLine{.path = feet_path({{0, 352}, {200, 352}, {400, 352}, {620, 352}}),
                                     .lowest_conductor_m = 18.5 * ft,
                                     .voltage_v = 7200});
  yard.add("Yard gravel", Cover{.outline = feet_path({{40, 20}, {580, 20}, {580, 330}, {200, 330}, {40, 210}}),
                                .cover = "gravel",
                                .soil = SoilGroup::c});
}

}  // namespace

Site old_yard() {
  SceneBuilder yard{bare()};
  const ItemId leg = yard.add("Leg", Leg{.at = feet(300, 236),
                                         .discharge_height_m = 98 * ft,
                                         .distributor_drop_m = 5 * ft,
                                         .outlets = 6,
                                         .boot = {.width_m = 6 * ft, .length_m = 8 * ft, .depth_m = 8 * ft}});
  add_bins(yard, leg);
  add_traffic(yard);
  add_neighbours(yard);
  return yard.site();
}

}  // namespace yardwright::scenes
