#include "geom/drain/storm/pit_network.hpp"

#include <catch2/catch.hpp>
#include <functional>
#include <optional>
#include <random>

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

constexpr double cubic_foot_m3 = foot_m * foot_m * foot_m;
constexpr double gallon_a_minute = 0.003785411784 / 60;

PitTank tank_of(double holds_ft3, double pump_gpm = 0) {
  const double plan_m2 = 4, holds_m3 = holds_ft3 * cubic_foot_m3;
  return {ItemId{1}, 0, holds_m3 / plan_m2, plan_m2, {pump_gpm * gallon_a_minute, 0, 0}};
}

/// When the first pit of a network begins to spill under an inflow told by the time, if it does until `end_s`.
std::optional<double> spill_begins_s(PitNetwork network, const std::function<double(double)>& inflow_m3_per_s,
                                     double end_s) {
  constexpr double step_s = 0.05;
  for (int i = 0; i * step_s < end_s; ++i) {
    std::vector<double> inflow_m3(network.pits().size(), 0.0);
    inflow_m3[0] = inflow_m3_per_s((i + 0.5) * step_s) * step_s;
    network.step(step_s, inflow_m3);
    if (network.state(0).spilled_m3 > 0) return (i + 1) * step_s;
  }
  return std::nullopt;
}

/// A rise to 1.5 cfs at 600 s and a fall to nothing at 1,600 s.
double triangle_m3_per_s(double time_s) {
  const double share = time_s < 600 ? time_s / 600 : (1600 - time_s) / 1000;
  return 1.5 * cubic_foot_m3 * std::max(0.0, share);
}

}  // namespace

TEST_CASE("A pit fills in its volume over the net inflow", "[storm]") {
  // Arithmetic: 960 ft3, 4.131 cfs: 232 s without a pump, 260 s against one of 200 gpm.
  const auto steady = [](double) { return 4.131 * cubic_foot_m3; };
  CHECK(*spill_begins_s({{tank_of(960)}, {}}, steady, 600) == Approx(232.4).margin(0.5));
  CHECK(*spill_begins_s({{tank_of(960, 200)}, {}}, steady, 600) == Approx(260.5).margin(0.5));
}

TEST_CASE("A triangular storm overflows a pit when its closed form says", "[storm]") {
  // Triangle of 1.5 cfs at 600 s over 1,600 s against 250 gpm, by integration: 100 ft3 overflow at 505.6 s, 300 ft3 at
  // 746.6 s, 475 ft3 never. A pit of 300 ft3 is just held by 336.6 gpm.
  CHECK(*spill_begins_s({{tank_of(100, 250)}, {}}, triangle_m3_per_s, 1600) == Approx(505.6).margin(1));
  CHECK(*spill_begins_s({{tank_of(300, 250)}, {}}, triangle_m3_per_s, 1600) == Approx(746.6).margin(1));
  CHECK_FALSE(spill_begins_s({{tank_of(475, 250)}, {}}, triangle_m3_per_s, 1600));
  CHECK(spill_begins_s({{tank_of(300, 335)}, {}}, triangle_m3_per_s, 1600));
  CHECK_FALSE(spill_begins_s({{tank_of(300, 338)}, {}}, triangle_m3_per_s, 1600));
}

TEST_CASE("The next pit drowns through a tunnel when a pump fails, by hand", "[storm]") {
  // By hand. Pit A: 2 x 3 m, floor -3 m, rim 0; pit B: 2 x 2 m, floor -2.5 m, rim 0; a tunnel with its sill at -1.5 m, 1 m
  // wide, 1 m high. 0.02 m3/s come to A. B's pump lifts 0.015 m3/s between -2.2 m and -2.4 m, and fails.
  //   A rises to the sill: 1.5 m x 6 m2 = 9 m3: 450 s. Over the sill 0.02 m3/s need a head of
  //   (0.02 / (0.33 x 1 x 4.429))^(2/3) = 0.0572 m, another 0.343 m3: B takes all of it from about 467 s on.
  //   B rises to the sill: 1.0 m x 4 m2 = 4 m3, less what still fills A's head.
  //   Both rise to the rim together: 1.5 m x 10 m2 = 15 m3. In all 9 + 4 + 15 = 28 m3: 1,400 s.
  const PitTank a{ItemId{1}, -3, 0, 6, {}};
  PitTank b{ItemId{2}, -2.5, 0, 4, {0.015, -2.2, -2.4, false}};
  const TunnelLink tunnel{0, 1, -1.5, 1, 1};
  PitNetwork network{{a, b}, {tunnel}};
  constexpr double step_s = 0.1;
  std::optional<double> sill_s, b_wet_s, b_at_sill_s, spill_s;
  for (int i = 1; i * step_s < 1600 && !spill_s; ++i) {
    network.step(step_s, {0.02 * step_s, 0});
    const double now_s = i * step_s;
    if (!sill_s && network.level_m(0) > -1.5) sill_s = now_s;
    if (!b_wet_s && network.level_m(1) > -2.4) b_wet_s = now_s;
    if (!b_at_sill_s && network.level_m(1) > -1.5) b_at_sill_s = now_s;
    if (network.state(0).spilled_m3 + network.state(1).spilled_m3 > 0) spill_s = now_s;
  }
  CHECK(*sill_s == Approx(450).margin(1));
  CHECK(*b_at_sill_s == Approx(450 + (4 + 0.343) / 0.02).margin(1));
  CHECK(*b_wet_s > 450);
  CHECK(*b_wet_s < 450 + (0.1 * 4 + 0.343) / 0.02 + 1);
  CHECK(*spill_s == Approx(1400).margin(2));

  // With the pump, by the balance at 1,600 s: 32 m3 came; it runs from 1.2 + 0.343 m3 past the sill, 527 s, on and lifts
  // 16.1 m3; 15.9 m3 stand, 2.9 more than to the sill: both pits at -1.5 + 0.29 m, well under the rim.
  b.pump.works = true;
  PitNetwork pumped{{a, b}, {tunnel}};
  for (int i = 0; i * step_s < 1600; ++i) pumped.step(step_s, {0.02 * step_s, 0});
  CHECK(pumped.pumped_m3() == Approx(0.015 * (1600 - 527)).epsilon(0.005));
  CHECK(pumped.level_m(0) == Approx(-1.21).margin(0.01));
  CHECK(pumped.level_m(1) == Approx(-1.21).margin(0.01));
}

TEST_CASE("A pump that is large enough starts and stops by its float", "[storm]") {
  PitNetwork network{{{ItemId{1}, 0, 3, 2, {0.01, 0.5, 0.2}}}, {}};
  int starts = 0;
  bool ran = false;
  for (int i = 0; i < 4000; ++i) {
    network.step(0.5, {0.002 * 0.5});
    const bool runs = network.state(0).pump_runs;
    starts += runs && !ran;
    ran = runs;
    REQUIRE(network.level_m(0) < 0.5 + 0.002);
  }
  // 0.6 m3 fill in 300 s and empty in 75 s, a start every 375 s after the first at 500 s: by 2,000 s at 500 ... 2,000.
  CHECK(starts >= 4);
  CHECK(starts <= 5);
}

TEST_CASE("Water in is water pumped, spilled or standing, in random pits", "[storm]") {
  const unsigned seed = 77;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> share(0, 1);
  for (int yard = 0; yard < 50; ++yard) {
    std::vector<PitTank> pits;
    for (int i = 0; i < 4; ++i)
      pits.push_back({ItemId{i + 1},
                      -4 * share(random) - 0.5,
                      share(random),
                      1 + 9 * share(random),
                      {share(random) / 50, -0.1, -0.4}});
    const auto sill_m = [&] { return -5 * share(random); };  // some under a floor, some over a rim
    PitNetwork network{pits, {{0, 1, sill_m(), 1, 0.5}, {1, 2, sill_m(), 0.5, 2}, {3, 0, sill_m(), 2, 1}}};
    double in_m3 = 0, spilled_m3 = 0;
    for (int i = 0; i < 500; ++i) {
      std::vector<double> inflow_m3;
      for (int pit = 0; pit < 4; ++pit) inflow_m3.push_back(share(random) * 0.05);
      for (const double volume : inflow_m3) in_m3 += volume;
      network.step(1, inflow_m3);
      for (std::size_t pit = 0; pit < 4; ++pit) {
        spilled_m3 += network.state(pit).spilled_m3;
        REQUIRE(network.state(pit).volume_m3 >= 0);
        REQUIRE(network.room_m3(pit) >= -1e-12);
      }
    }
    CHECK(network.standing_m3() + network.pumped_m3() + spilled_m3 == Approx(in_m3).epsilon(1e-12));
  }
}

TEST_CASE("A dry pit gives no water through a tunnel under its floor", "[storm]") {
  PitNetwork network{{{ItemId{1}, -1.5, 0, 6, {}}, {ItemId{2}, -2.5, 0, 6, {}}}, {{0, 1, -1.8, 1, 1}}};
  for (int i = 0; i < 100; ++i) network.step(1, {0, 0});
  CHECK(network.state(0).volume_m3 == 0);
  CHECK(network.state(1).volume_m3 == 0);
  network.step(1, {0.6, 0});
  for (int i = 0; i < 1000; ++i) network.step(1, {0, 0});
  CHECK(network.state(1).volume_m3 == Approx(0.6).margin(0.005));
  CHECK(network.state(1).tunnels_m3 == Approx(0.6).margin(0.005));
  CHECK(network.state(0).tunnels_m3 == Approx(-0.6).margin(0.005));
}
