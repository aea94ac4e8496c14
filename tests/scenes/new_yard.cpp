#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

namespace yardwright::scenes {

namespace {

constexpr double foot_of_yard_m = 280.0;

/// A broad even fall to the south-west.
double level_m(SitePoint at) { return foot_of_yard_m + 0.012 * at.y + 0.004 * at.x; }

Site bare() {
  Site site;
  site.name = "Alder Slope, new yard";
  site.title = {"R. and M. Tilsen (invented)", "Alder Slope, the flat field (invented)", "", ""};
  site.units = UnitSystem::metric;
  site.lot = rectangular_lot(300, 240);
  site.lot.edges = {LotEdge::road, LotEdge::neighbour, LotEdge::own_field, LotEdge::neighbour};
  site.ground.levels = levels_of({{-30, -30}, 1.0, 360, 330}, level_m);
  site.ground.file = "new-yard-ground.tif";
  site.ground.source = "invented";
  site.phases = {"first build", "two more bins"};
  site.rule_overrides = {{"pace.capacity", 2500, Basis::local, "two good years of corn (invented)"}};
  site.storm.rain_m = 0.125;
  site.storm.two_year_rain_m = 0.075;
  return site;
}

/// A bin on a raised pad that falls away all around.
ItemId add_bin(SceneBuilder& yard, std::string name, SitePoint at, Bin bin, int phase = 0) {
  bin.at = at;
  const double pad_level_m = level_m(at) + 0.5;
  yard.add("Pad of " + name,
           Pad{.outline = ring_around(at, bin.diameter_m / 2 + 0.4), .level_m = pad_level_m, .side_slope_ratio = 10},
           phase);
  return yard.add(std::move(name), bin, phase);
}

void add_bins(SceneBuilder& yard, ItemId leg) {
  const Bin store{
      .diameter_m = 11, .eave_height_m = 8, .fan_side = Bearing::degrees(0), .unload_side = Bearing::degrees(0)};
  const Bin wet{.diameter_m = 6,
                .eave_height_m = 8,
                .floor = BinFloor::hopper,
                .use = BinUse::wet_holding,
                .fan_side = Bearing::degrees(0),
                .unload_side = Bearing::degrees(0)};
  const double row_m = 140;
  yard.spout(leg, add_bin(yard, "Store 1", {139, row_m}, store));
  yard.spout(leg, add_bin(yard, "Store 2", {161, row_m}, store));
  yard.spout(leg, add_bin(yard, "Wet bin", {150, row_m + 10}, wet), GrainState::wet);
  yard.spout(leg, add_bin(yard, "Store 3", {126, row_m - 14}, store, 1), GrainState::dry, 1);
  yard.spout(leg, add_bin(yard, "Store 4", {174, row_m - 14}, store, 1), GrainState::dry, 1);
}

void add_traffic(SceneBuilder& yard) {
  const ItemId way_in = yard.add("Gate in", Gate{.at = {40, 0}, .facing = Bearing::degrees(0), .width_m = 16});
  const ItemId way_out = yard.add("Gate out", Gate{.at = {260, 0}, .facing = Bearing::degrees(180), .width_m = 16});
  const ItemId dump =
      yard.add("Dump", Receiving{.at = {150, 90},
                                 .facing = Bearing::degrees(90),
                                 .length_m = 18,
                                 .width_m = 8,
                                 .height_m = 8,
                                 .door_width_m = 5.5,
                                 .door_height_m = 5.2,
                                 .clear_height_m = 7.5,
                                 .pit = {.width_m = 3, .length_m = 3.6, .depth_m = 2.4, .rim_height_m = 0.3}});
  const SitePath loop{{40, -20}, {40, 90}, {260, 90}, {260, -20}};
  yard.add("Loop", Drive{.path = loop, .width_m = 6.5, .corner_radius_m = 25});
  yard.add("Semi through the dump",
           Route{.path = loop, .vehicle = "wb-67", .corner_radius_m = 25, .stops = {way_in, dump, way_out}});
}

}  // namespace

Site new_yard() {
  SceneBuilder yard{bare()};
  const ItemId leg = yard.add(
      "Leg", Leg{.at = {150, 128},
                 .discharge_height_m = 40,
                 .distributor_drop_m = 1.8,
                 .outlets = 8,
                 .boot = {.width_m = 2.4, .length_m = 3, .depth_m = 2.4, .rim_height_m = 0.3, .pump_m3_per_s = 0.004}});
  add_bins(yard, leg);
  add_traffic(yard);
  yard.add("Office",
           Building{.at = {110, 60}, .length_m = 8, .width_m = 6, .height_m = 3.5, .use = BuildingUse::control_room});
  return yard.site();
}

}  // namespace yardwright::scenes
