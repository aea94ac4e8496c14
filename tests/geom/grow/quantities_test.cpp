// Quantities against closed forms worked by hand, and the differences of phases against the differences of quantities.
#include "geom/grow/quantities.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>
#include <set>

#include "geom/io/catalogs.hpp"
#include "geom/units/text.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::scenes;
using grow::amount_of;

namespace {

constexpr double pi = std::numbers::pi, ft = 0.3048, inch = 0.0254;
/// 27 cubic feet of 0.3048 m exactly: NIST Special Publication 811, appendix B.8, gives 7.645 549 E-01 (from memory).
constexpr double cubic_yard_m3 = 0.764554857984;

grow::Quantities of(const Site& site) { return grow::quantities(site, design_surface(site), shipped_catalogs()); }

Site yard_of(std::vector<Thing> things) {
  SceneBuilder yard{Site{}};
  for (Thing& thing : things) yard.add("", std::move(thing));
  return yard.site();
}

double lone(Thing thing, Work work) { return amount_of(of(yard_of({std::move(thing)})), work); }

Site with_rule(Site site, const std::string& rule, double value) {
  site.rule_overrides.push_back({rule, value, Basis::local, "test"});
  return site;
}

}  // namespace

TEST_CASE("a cubic yard is its published share of a cubic metre") {
  CHECK(trade_unit(Work::cut, UnitSystem::us).suffix == "yd3");
  CHECK(trade_unit(Work::cut, UnitSystem::us).factor == Approx(cubic_yard_m3).epsilon(1e-12));
  // The same source: one square foot is 9.290 304 E-02 m2 (exact).
  CHECK(trade_unit(Work::paving, UnitSystem::us).factor == Approx(0.09290304).epsilon(1e-12));
  CHECK(text_in(10 * cubic_yard_m3, trade_unit(Work::cut, UnitSystem::us)) == "10.0 yd3");
}

TEST_CASE("a bin's foundation is a round slab and a ring under its wall") {
  Site site = yard_of({Bin{.diameter_m = 11, .foundation_height_m = 0.3}});
  site = with_rule(site, "grow.bin-slab", 0.15);
  site = with_rule(site, "grow.bin-slab-beyond", 0.5);
  site = with_rule(site, "grow.bin-ring-width", 0);
  // pi / 4 d2 t of 12 m and 15 cm.
  CHECK(amount_of(of(site), Work::bin_foundation) == Approx(16.9646003294).epsilon(1e-11));
  site.rule_overrides.pop_back();
  site = with_rule(site, "grow.bin-ring-width", 0.4);
  site = with_rule(site, "grow.bin-ring-depth", 0.85);
  // The ring: its middle line pi 11 m, 40 cm wide, from 85 cm under the ground to the slab's underside 15 cm over it.
  CHECK(amount_of(of(site), Work::bin_foundation) == Approx(16.9646003294 + pi * 11 * 0.4 * 1.0).epsilon(1e-11));
}

TEST_CASE("the concrete of pits, tunnels and slabs is the outside less the inside") {
  const PitBody body{.width_m = 6 * ft, .length_m = 8 * ft, .depth_m = 8 * ft, .rim_height_m = 0.5 * ft};
  // By hand in feet, walls of 8 in, a floor of 12 in: outside 7 1/3 x 9 1/3 ft.
  const double outside_ft2 = 22.0 / 3 * 28.0 / 3;
  CHECK(lone(Pit{.body = body}, Work::pit) ==
        Approx(((outside_ft2 - 48) * 8.5 + outside_ft2) * ft * ft * ft).epsilon(1e-12));
  CHECK(lone(Leg{.boot = body}, Work::pit) == Approx(lone(Pit{.body = body}, Work::pit)));
  CHECK(lone(Pit{.body = {.depth_m = 0}}, Work::pit) == 0);
  // A passage 4 ft wide and 6 ft high: floor 12 in, walls and roof 8 in.
  const Tunnel tunnel{.path = {{0, 0}, {10 * ft, 0}}, .width_m = 4 * ft, .height_m = 6 * ft};
  CHECK(lone(tunnel, Work::tunnel) == Approx((16.0 / 3 * 23.0 / 3 - 24) * 10 * ft * ft * ft).epsilon(1e-12));
  CHECK(lone(Dryer{.length_m = 30 * ft, .width_m = 10 * ft}, Work::machine_slab) ==
        Approx(32 * 12 * 8.0 / 12 * ft * ft * ft).epsilon(1e-12));
  CHECK(lone(OverheadHolding{.stand_width_m = 16 * ft}, Work::machine_slab) ==
        Approx(18 * 18 * 8.0 / 12 * ft * ft * ft).epsilon(1e-12));
  CHECK(lone(Receiving{.length_m = 50 * ft, .width_m = 20 * ft}, Work::receiving_floor) ==
        Approx((50 * 20 - 10 * 12) * 8.0 / 12 * ft * ft * ft).epsilon(1e-12));
}

TEST_CASE("a spout and a conveyor are as long as they are in space") {
  SceneBuilder yard{Site{}};
  const ItemId leg = yard.add("", Leg{.at = {0, 0}, .discharge_height_m = 40, .distributor_drop_m = 2});
  // Inlet: 20 m over the ground; 18 m under the outlet and 24 m beside it: 30 m by Pythagoras.
  const ItemId dryer = yard.add("", Dryer{.at = {24, 0}, .inlet_height_m = 20});
  yard.spout(leg, dryer);
  yard.add("", Conveyor{.path = {{0, 0}, {8, 0}}, .type = ConveyorKind::belt, .end_height_m = 6});
  const grow::Quantities found = of(yard.site());
  CHECK(amount_of(found, Work::spout) == Approx(30).epsilon(1e-12));
  CHECK(amount_of(found, Work::belt) == Approx(10).epsilon(1e-12));
  CHECK(amount_of(found, Work::drag) == 0);
  CHECK(amount_of(found, Work::leg) == 40);
  const grow::QuantityLine* spouts = find(found, Work::spout, {Spout{}.diameter_m});
  REQUIRE(spouts != nullptr);
  CHECK(spouts->parts.front().items == std::vector<ItemId>{{3}});
}

TEST_CASE("gravel is width by length by thickness") {
  const Drive drive{.path = {{0, 0}, {100, 0}}, .width_m = 5};
  CHECK(lone(drive, Work::gravel) == Approx(100 * 5 * 8 * inch).epsilon(1e-12));
  // A right-angled corner of radius r is 2r - pi r / 2 shorter than its legs.
  const Drive bent{.path = {{0, 0}, {100, 0}, {100, 100}}, .width_m = 5, .corner_radius_m = 20};
  CHECK(lone(bent, Work::gravel) == Approx((200 - 40 + 10 * pi) * 5 * 8 * inch).epsilon(1e-5));
  CHECK(lone(Drive{.path = drive.path, .width_m = 5, .surface = DriveSurface::paved}, Work::paving) == Approx(500));
  CHECK(lone(Drive{.path = drive.path, .surface = DriveSurface::dirt}, Work::gravel) == 0);
  CHECK(lone(Pad{.outline = {{0, 0}, {30, 0}, {30, 20}, {0, 20}}}, Work::gravel) == Approx(600 * 6 * inch));
}

TEST_CASE("bins and pipes are counted by their sizes") {
  const grow::Quantities found =
      of(yard_of({Bin{}, Bin{}, Bin{.eave_height_m = 30 * ft}, Culvert{.path = {{0, 0}, {3, 4}}},
                  Culvert{.path = {{0, 0}, {0, 7}}}, TileLine{.path = {{0, 0}, {9, 0}}}}));
  const grow::QuantityLine* bins = find(found, Work::bin, {36 * ft, 24 * ft});
  REQUIRE(bins != nullptr);
  CHECK(bins->count() == 2);
  CHECK(size_text(Work::bin, bins->size_m, UnitSystem::us) == "36 ft x 24 ft");
  CHECK(find(found, Work::bin, {36 * ft, 30 * ft})->count() == 1);
  const grow::QuantityLine* culverts = find(found, Work::culvert, {18 * inch});
  REQUIRE(culverts != nullptr);
  CHECK(culverts->amount() == Approx(12));
  CHECK(size_text(Work::culvert, culverts->size_m, UnitSystem::us) == "18 in");
  CHECK(find(found, Work::tile_line, {8 * inch})->amount() == Approx(9));
}

TEST_CASE("what cannot be counted is told") {
  SceneBuilder yard{Site{}};
  const ItemId bin = yard.add("North", Bin{.grain = "hops"});
  yard.add("Loose", Spout{});
  yard.add("", Pad{.outline = {{0, 0}, {30, 0}, {30, 20}}});
  const grow::Quantities found = of(yard.site());
  REQUIRE(found.left_out.size() == 3);
  CHECK(found.left_out[0].item == bin);
  CHECK(found.left_out[0].why.find("hops") != std::string::npos);
  CHECK(found.left_out[1].item == ItemId{2});
  CHECK(found.left_out[2].why.find("ground is not known") != std::string::npos);
  CHECK(amount_of(found, Work::bin) == 0);
  CHECK(of(Site{}).lines.empty());
}

TEST_CASE("a rule of a yard's own changes what is counted by it") {
  Site site = yard_of({Bin{}, Dryer{.at = {30, 0}}, Receiving{.at = {60, 0}}, Pit{.at = {90, 0}},
                       Drive{.path = {{0, 50}, {90, 50}}}, Pad{.outline = {{0, 70}, {9, 70}, {9, 80}}}});
  const std::vector<std::pair<std::string, Work>> counted_by{{"grow.bin-slab", Work::bin_foundation},
                                                             {"grow.bin-slab-beyond", Work::bin_foundation},
                                                             {"grow.bin-ring-width", Work::bin_foundation},
                                                             {"grow.bin-ring-depth", Work::bin_foundation},
                                                             {"grow.machine-slab", Work::machine_slab},
                                                             {"grow.machine-slab-beyond", Work::machine_slab},
                                                             {"grow.receiving-floor", Work::receiving_floor},
                                                             {"grow.gravel-drive", Work::gravel},
                                                             {"grow.gravel-pad", Work::gravel},
                                                             {"drain.pit-wall", Work::pit},
                                                             {"drain.pit-floor", Work::pit},
                                                             {"pace.pack", Work::bin}};
  const grow::Quantities before = of(site);
  for (const auto& [rule, work] : counted_by) {
    INFO(rule);
    const grow::Quantities after = of(with_rule(site, rule, 1.5 * shipped_catalogs().rules.at(rule).value));
    CHECK(amount_of(after, work) > 1.01 * amount_of(before, work));
  }
  // None is forgotten: the book says of its rules which are for counting.
  for (const Rule& rule : shipped_catalogs().rules.rules()) {
    if (rule.source.find("for counting alone") == std::string::npos) continue;
    CHECK(std::ranges::count(counted_by, rule.id, &std::pair<std::string, Work>::first) == 1);
  }
}

TEST_CASE("what is built less what goes is what two phases differ by") {
  const unsigned seed = Catch::rngSeed() + 1;
  CAPTURE(seed);
  std::mt19937 random{seed};
  for (unsigned yard = 0; yard < 30; ++yard) {
    Site site = crowded_yard(seed + yard);
    site.phases = {"today", "next", "later"};
    for (Item& item : site.items) {
      item.phase = static_cast<int>(random() % 3);
      if (random() % 4 == 0 && item.phase < 2) item.gone_in = item.phase + 1;
    }
    const Site before = as_of(site, static_cast<int>(random() % 2)), after = as_of(site, 2);
    const grow::Quantities was = of(before), is = of(after);
    const grow::QuantityChange change = grow::quantity_change(before, after, shipped_catalogs());
    for (std::size_t i = 0; i < work_count; ++i) {
      const Work work = static_cast<Work>(i);
      if (is_earth(work)) continue;
      INFO(names_of(work)[i]);
      const double differ = amount_of(is, work) - amount_of(was, work);
      CHECK(amount_of(change.built, work) - amount_of(change.gone, work) == Approx(differ).margin(1e-9));
    }
    // Of earth, what is cut less what is filled adds up over the phases.
    const auto left = [](const grow::Quantities& of) { return amount_of(of, Work::cut) - amount_of(of, Work::fill); };
    CHECK(left(change.built) == Approx(left(is) - left(was)).margin(1e-6));
  }
}

TEST_CASE("nothing is built between a state and itself") {
  const Site site = old_yard();
  const grow::QuantityChange change = grow::quantity_change(site, site, shipped_catalogs());
  CHECK(change.built.lines.empty());
  CHECK(change.gone.lines.empty());
  CHECK(of(site).lines.size() > 10);
}

TEST_CASE("cut and fill are those of the graded ground") {
  Site bare;
  bare.ground.levels = levels_of({{0, 0}, 1, 60, 60}, [](SitePoint) { return 10.0; });
  bare.ground.shrink_ratio = 0.2;
  SceneBuilder yard{bare};
  // 20 x 20 m cut down by 1 m; its slopes of 0.5 : 1 take about 80 m by 0.5 m by half of 1 m more, by whole cells.
  const ItemId pad =
      yard.add("", Pad{.outline = {{20, 20}, {40, 20}, {40, 40}, {20, 40}}, .level_m = 9, .side_slope_ratio = 0.5});
  const grow::Quantities found = of(yard.site());
  CHECK(amount_of(found, Work::cut) == Approx(400).epsilon(0.06));
  CHECK(amount_of(found, Work::fill) == 0);
  CHECK(amount_of(found, Work::earth_left_over) == Approx(0.8 * amount_of(found, Work::cut)));
  CHECK(find(found, Work::cut, {})->parts.front().items == std::vector<ItemId>{pad});
}
