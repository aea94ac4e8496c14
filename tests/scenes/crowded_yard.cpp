#include "tests/scenes/crowded_yard.hpp"

#include <cmath>
#include <random>

#include "tests/scenes/scene_builder.hpp"

namespace yardwright::scenes {

namespace {

constexpr double length_m = 150, width_m = 120;

class Thrower {
 public:
  Thrower(unsigned seed, SceneBuilder& yard) : random_{seed}, yard_{yard} {}

  double between(double low, double high) { return std::uniform_real_distribution{low, high}(random_); }
  SitePoint place() { return {between(12, length_m - 12), between(12, width_m - 12)}; }
  Bearing facing() { return Bearing::degrees(between(0, 360)); }

  void throw_things() {
    for (int i = 0; i < 5; ++i) {
      bins_.push_back(yard_.add("", Bin{.at = place(),
                                        .diameter_m = between(6, 14),
                                        .eave_height_m = between(5, 10),
                                        .fan_side = facing(),
                                        .unload_side = facing()}));
    }
    const ItemId leg = yard_.add("", Leg{.at = place(), .discharge_height_m = between(15, 35)});
    for (std::size_t i = 0; i < 3; ++i) yard_.spout(leg, bins_[i]);
    yard_.add("", Dryer{.at = place(), .facing = facing()});
    yard_.add("", Building{.at = place(), .facing = facing(), .length_m = 15, .width_m = 10});
    yard_.add("", Building{.at = place(), .facing = facing(), .use = BuildingUse::dwelling});
    for (const double capacity_m3 : {1.9, 3.8}) {
      yard_.add("", Tank{.at = place(), .facing = facing(), .water_capacity_m3 = capacity_m3});
    }
    yard_.add("", Tank{.at = place(), .facing = facing(), .contents = TankContents::ammonia});
    yard_.add("", Well{.at = place()});
    yard_.add("", OverheadLine{.path = {place(), place()}, .lowest_conductor_m = between(5.6, 14)});
  }

  /// In by the road, past a few places and out again.
  void throw_way(std::string vehicle) {
    Route way{.path = {{between(20, 60), -20}}, .vehicle = std::move(vehicle), .corner_radius_m = between(8, 18)};
    const int corners = std::uniform_int_distribution{1, 3}(random_);
    for (int i = 0; i < corners; ++i) way.path.push_back(place());
    way.path.push_back({between(90, 130), -20});
    way.stops = {bins_[3], bins_[4]};
    yard_.add("", std::move(way));
  }

 private:
  std::mt19937 random_;
  SceneBuilder& yard_;
  std::vector<ItemId> bins_;
};

}  // namespace

Site crowded_yard(unsigned seed) {
  Site bare;
  bare.lot = rectangular_lot(length_m, width_m);
  bare.lot.edges = {LotEdge::road, LotEdge::neighbour, LotEdge::own_field, LotEdge::neighbour};
  const double lean = 0.06 + 0.01 * (seed % 9);
  bare.ground.levels = levels_of({{-40, -60}, 1, 230, 220}, [lean](SitePoint at) {
    return 300 + 0.01 * at.x + lean * std::max(0.0, 30 - std::abs(at.y - 60));
  });
  SceneBuilder yard{bare};
  Thrower thrower{seed, yard};
  thrower.throw_things();
  thrower.throw_way("su-30");
  thrower.throw_way("wb-67");
  return yard.site();
}

}  // namespace yardwright::scenes
