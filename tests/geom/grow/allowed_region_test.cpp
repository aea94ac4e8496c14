#include "geom/grow/allowed_region.hpp"

#include <numbers>
#include <random>

#include "geom/shape/innermost.hpp"
#include "tests/geom/grow/grow_yard.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

constexpr double ft = 0.3048;

Site bare_lot(double length_m, double width_m, LotEdge edge = LotEdge::own_field) {
  Site site;
  site.lot = rectangular_lot(length_m, width_m, edge);
  return site;
}

/// Whether the yard's own checks have anything against the newcomer at a place: the same questions, asked of the yard with it
/// and its spout in it, of the rules that a keep-off stands for.
class Judge {
 public:
  explicit Judge(const GrowYard& yard) : yard_{yard} {}

  bool has_something_against(const Newcomer& newcomer, SitePoint at) const {
    std::vector<ItemId> legs;
    for_each<Leg>(yard_.site, [&](const Item& item, const Leg&) { legs.push_back(item.id); });
    for (const ItemId leg : legs) {
      if (!fails(newcomer, at, leg)) return false;
    }
    return !legs.empty() || fails(newcomer, at, {});
  }

 private:
  bool fails(const Newcomer& newcomer, SitePoint at, ItemId leg) const {
    Site site = yard_.site;
    Item item = newcomer.item;
    item.thing = newcomer.at(at);
    site.items.push_back(item);
    const ItemId spout = next_id(site);
    if (leg && is_filled_by_spout(item.thing))
      site.items.push_back({spout, "", 0, {}, Spout{.from = leg, .to = item.id}});
    Catalogs catalogs = shipped_catalogs();
    catalogs.rules = yard_.rules;
    const auto against = [&](const Findings& findings) {
      return std::ranges::any_of(findings, [&](const Finding& finding) {
        const bool about = std::ranges::any_of(finding.items, [&](ItemId id) { return id >= item.id; });
        const bool of_outlets = finding.rule == "reach.outlets" && std::ranges::count(finding.items, leg) > 0;
        if (!about && !of_outlets) return false;
        return (finding.verdict == Verdict::fail || finding.verdict == Verdict::caution) && counts(finding);
      });
    };
    const auto clear_has = [&](const Site& some) {
      return against(clear::ask(some, yard_.answers.surface, catalogs).findings);
    };
    // Of each thing Clear tells the tightest break alone: so every other one is asked about by itself as well.
    const auto pair_has = [&](const Item& other) { return clear_has(site_of(site, {other, item})); };
    return clear_has(site) || std::ranges::any_of(yard_.site.items, pair_has) ||
           (leg && against(reach::ask(site, yard_.answers.surface, catalogs).findings)) || in_the_way(item) ||
           on_steep_ground(newcomer, at);
  }

  static Site site_of(Site site, std::vector<Item> items) {
    site.items = std::move(items);
    return site;
  }

  /// Advice of another kind than where it stands is not what a region is about.
  static bool counts(const Finding& finding) {
    return finding.rule != "reach.free-span" && finding.rule != "clear.fire-road" && finding.rule != "reach.filled";
  }

  bool in_the_way(const Item& item) const {
    const double room_m = yard_.rules.at("turn.clearance-advice").value;
    for (const turn::DrivenRoute& route : yard_.answers.turn->routes) {
      const auto* vehicle = yardwright::find(shipped_catalogs().vehicles, route.drawn.vehicle);
      const auto passage = turn::passage_of(route.driven, turn::bodies_of(*vehicle));
      if (turn::least_clearance(route.driven, passage, *footprint(item.thing)).distance_m < room_m) return true;
    }
    return false;
  }

  bool on_steep_ground(const Newcomer& newcomer, SitePoint at) const {
    double low_m = 1e9, high_m = -1e9;
    const auto look = [&](SitePoint point) {
      const double level_m = yard_.answers.surface.level_m(point);
      low_m = std::min(low_m, level_m);
      high_m = std::max(high_m, level_m);
    };
    look(at);
    for (const SitePoint& corner : as_polygon(newcomer.shape, 16).outer) look(at + (corner - SitePoint{}));
    return high_m - low_m > yard_.rules.at("grow.fall-across").value;
  }

  const GrowYard& yard_;
};

/// Farther than this from every edge of the region, the region and the checks agree. Samples lie up to a metre apart, with
/// their crossings narrowed down.
constexpr double tolerance_m = 0.25;

/// The region without water and without the rules that no check of the yard has: those have their own tests.
Region judged_part(const Newcomer& newcomer, const AllowedRegion& region) {
  Region pieces;
  for (const KeepOff& one : region.reasons) {
    if (one.rule != "drain.water-at-bin") pieces.insert(pieces.end(), one.area.begin(), one.area.end());
  }
  return without({Polygon{newcomer.site.lot.corners, {}}}, united(pieces));
}

}  // namespace

TEST_CASE("The allowed region is that of every check at every place, on thrown yards") {
  int asked = 0, free = 0, wrong = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    const GrowYard yard{crowded_yard(seed)};
    std::mt19937 random{seed};
    std::uniform_real_distribution<double> east{0, 150}, north{0, 120}, turn{0, 360};
    Thing thing = Bin{.diameter_m = 5.0 + seed % 7,
                      .eave_height_m = 4.0 + seed % 5,
                      .fan_side = Bearing::degrees(turn(random)),
                      .unload_side = Bearing::degrees(turn(random))};
    if (seed % 4 == 0) thing = Building{.facing = Bearing::degrees(turn(random)), .length_m = 12, .width_m = 7};
    if (seed % 9 == 0) thing = Dryer{.facing = Bearing::degrees(turn(random))};
    const Newcomer newcomer = yard.with(thing);
    const Region region = judged_part(newcomer, allowed_region(newcomer));
    const Judge judge{yard};
    for (int i = 0; i < 50; ++i) {
      const SitePoint at{east(random), north(random)};
      const double depth_m = depth_within_m(region, at);
      if (std::abs(depth_m) < tolerance_m) continue;
      ++asked;
      free += depth_m > 0 ? 1 : 0;
      if ((depth_m > 0) == !judge.has_something_against(newcomer, at)) continue;
      ++wrong;
      UNSCOPED_INFO("seed " << seed << " at " << at.x << ", " << at.y << ": depth in the region " << depth_m);
    }
  }
  INFO(asked << " places asked, " << free << " of them free");
  CHECK(wrong == 0);
  CHECK(free > 300);
}

TEST_CASE("On a bare lot a bin may stand wherever its wall is inside, and keeps its distance from a lone bin") {
  Site site = bare_lot(100, 80);
  SceneBuilder yard{site};
  const ItemId lone = yard.add(
      "", Bin{.at = {50, 40}, .diameter_m = 10, .fan_side = Bearing::degrees(0), .unload_side = Bearing::degrees(0)});
  const GrowYard asked{yard.site()};
  const Newcomer bin =
      asked.with(Bin{.diameter_m = 10, .fan_side = Bearing::degrees(180), .unload_side = Bearing::degrees(180)});
  const AllowedRegion region = allowed_region(bin);
  REQUIRE(reason(region, "clear.bin-bin", lone) != nullptr);
  CHECK(area_m2(reason(region, "clear.bin-bin", lone)->area) ==
        Approx(std::numbers::pi * std::pow(10 + 6 * ft, 2)).epsilon(0.002));
  // No leg: nothing is said of its reach. Nothing fails where only advice speaks against it.
  CHECK(area_m2(region.bearable) == Approx(90 * 70 - std::numbers::pi * 100).epsilon(0.001));
  CHECK(area_m2(region.free) < area_m2(region.bearable));
  const auto why = reasons_at(region, {50, 49});
  REQUIRE_FALSE(why.empty());
  CHECK(why.front().reason->item == lone);
  CHECK(why.front().inside_m > 0);
}

TEST_CASE("A bin stands where a leg with an outlet left fills it, and not in the shadow of a tall one") {
  Site site = bare_lot(200, 200);
  SceneBuilder yard{site};
  const ItemId leg =
      yard.add("", Leg{.at = {100, 100}, .discharge_height_m = 30, .distributor_drop_m = 2, .outlets = 2});
  const ItemId tall = yard.add("", Bin{.at = {115, 100}, .diameter_m = 12, .eave_height_m = 15});
  yard.spout(leg, tall);
  const GrowYard asked{yard.site()};
  const Bin small{.diameter_m = 8, .eave_height_m = 6};
  const AllowedRegion region = allowed_region(asked.with(small));
  // 37 degrees, by hand: outlet 28, inlet 1 + 6 + 4 tan 30 + 2 ft over the ground.
  const double inlet_m = 1 * ft + 6 + 4 * std::tan(std::numbers::pi / 6) + 2 * ft;
  const double ring_m = (28 - inlet_m) / std::tan(37 * std::numbers::pi / 180);
  const KeepOff* far = reason(region, "reach.slope-dry");
  REQUIRE(far != nullptr);
  CHECK(200 * 200 - area_m2(far->area) == Approx(std::numbers::pi * ring_m * ring_m).epsilon(0.002));
  REQUIRE(reason(region, "reach.clear-of-roofs", tall) != nullptr);
  CHECK(contains(reason(region, "reach.clear-of-roofs", tall)->area, {124.5, 100}));
  const auto spots = best_spots(asked.with(small), region, 3);
  REQUIRE_FALSE(spots.empty());
  for (const Spot& spot : spots) CHECK(depth_within_m(region.free, spot.at) == Approx(spot.margin_m));

  Site full = asked.site;
  std::get<Leg>(full.items[0].thing).outlets = 1;
  const GrowYard no_outlet{full};
  const AllowedRegion none = allowed_region(no_outlet.with(small));
  CHECK(none.free.empty());
  CHECK(reason(none, "reach.outlets") != nullptr);
}

TEST_CASE("What is placed at a best spot passes the yard's checks") {
  for (const unsigned seed : {3u, 11u, 42u, 77u}) {
    const GrowYard yard{crowded_yard(seed)};
    const Newcomer newcomer = yard.with(Bin{.diameter_m = 6, .eave_height_m = 5});
    const AllowedRegion region = allowed_region(newcomer);
    for (const Spot& spot : best_spots(newcomer, region, 2)) {
      const Site placed = yardwright::apply(yard.site, placed_at(newcomer, spot.at));
      const Answers answers = check(placed, shipped_catalogs());
      for (const Finding& finding : all_findings(answers)) {
        if (finding.verdict != Verdict::fail || finding.question == Question::drain) continue;
        INFO("seed " << seed << ": " << finding.id << " " << finding.title);
        CHECK(std::ranges::none_of(finding.items, [&](ItemId id) { return id >= newcomer.item.id; }));
      }
    }
  }
}

TEST_CASE("A site's own value for a rule of Grow moves the region") {
  Site site = bare_lot(100, 80);
  site.ground.levels = levels_of({{-10, -10}, 1, 120, 100}, [](SitePoint at) { return 0.05 * at.x; });
  SceneBuilder yard{site};
  yard.add("", Drive{.path = {{0, 20}, {100, 20}}});
  yard.add("", Swale{.path = {{0, 60}, {100, 60}}});
  const Bin bin{.diameter_m = 6};
  const auto free_m2 = [&](const Site& asked) { return area_m2(allowed_region(GrowYard{asked}.with(bin)).free); };
  const double by_book_m2 = free_m2(yard.site());
  CHECK(by_book_m2 > 1000);
  for (const auto& [rule, own] :
       {std::pair{"grow.off-drives", 2.0}, {"grow.off-drains", 2.0}, {"grow.fall-across", 0.2}}) {
    INFO(rule);
    const Site set = yardwright::apply(yard.site(), SetRule{{rule, own, Basis::local, "set here"}});
    CHECK(free_m2(set) < by_book_m2 - 100);
  }
}

TEST_CASE("Ground under water after the storm is no place for a bin") {
  Site site = bare_lot(100, 80);
  site.ground.levels = levels_of({{-10, -10}, 1, 120, 100}, [](SitePoint at) {
    return std::max(9.0, 10 - 0.1 * std::max(0.0, 15 - distance(at, {50, 40})));
  });
  const GrowYard yard{site};
  const AllowedRegion region = allowed_region(yard.with(Bin{.diameter_m = 6}));
  const KeepOff* wet = reason(region, "drain.water-at-bin");
  REQUIRE(wet != nullptr);
  // The pond is 15 m in radius; less what is shallower than 1 in, more the bin and a cell and a half beside it.
  const double radius_m = std::sqrt(area_m2(wet->area) / std::numbers::pi);
  CHECK(radius_m == Approx(15 - 0.254 + 3 + 1.5).margin(1.0));
  CHECK(region.free.front().holes.size() == 1);
}

TEST_CASE("A thing that covers no ground is no newcomer, and a lot that is not drawn allows nothing") {
  const GrowYard yard{Site{}};
  CHECK_FALSE(newcomer(yard.site, yard.answers, yard.rules, Drive{}, 0));
  const AllowedRegion none = allowed_region(yard.with(Bin{}));
  CHECK(none.free.empty());
  CHECK(none.reasons.empty());
}
