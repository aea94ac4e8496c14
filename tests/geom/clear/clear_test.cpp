#include "geom/clear/clear.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "tests/geom/clear/asked_yard.hpp"

using namespace yardwright;
using namespace yardwright::clear;

namespace {

/// Sixty things in the five kinds that most rules are about, thrown on a 400 m lot.
Site thrown_yard(unsigned seed) {
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place{30, 370}, turn{0, 360};
  std::vector<Thing> things;
  for (int i = 0; i < 12; ++i) {
    const auto at = [&] { return SitePoint{place(random), place(random)}; };
    things.push_back(Bin{.at = at(), .fan_side = Bearing::degrees(turn(random))});
    things.push_back(Building{.at = at(), .facing = Bearing::degrees(turn(random))});
    things.push_back(Tank{.at = at(), .facing = Bearing::degrees(turn(random))});
    things.push_back(Dryer{.at = at(), .facing = Bearing::degrees(turn(random))});
    things.push_back(Leg{.at = at()});
  }
  Site site = yard_with(std::move(things));
  site.lot = rectangular_lot(400, 400);
  return site;
}

}  // namespace

TEST_CASE("Every mend of every finding of a thrown yard passes when it is asked again") {
  int mended = 0;
  for (const unsigned seed : {1u, 2u, 3u}) {
    const Site site = thrown_yard(seed);
    for (const Finding& found : asked(site).findings) {
      if (found.verdict != Verdict::fail && found.verdict != Verdict::caution) continue;
      INFO("seed " << seed << ", " << found.id);
      for (const Mend& mend : found.mends) {
        CHECK(is_kept(asked(yardwright::apply(site, mend.edits)).findings, found));
        ++mended;
      }
    }
  }
  CHECK(mended > 10);
}

TEST_CASE("Moving the whole yard changes no distance") {
  Site site = thrown_yard(7), elsewhere = site;
  for (Item& item : elsewhere.items) item.thing = moved(item.thing, {1000, -500});
  for (SitePoint& corner : elsewhere.lot.corners) corner = corner + SiteVector{1000, -500};
  const Answer here = asked(site), there = asked(elsewhere);
  REQUIRE(here.findings.size() == there.findings.size());
  for (const Finding& one : here.findings) {
    const Finding* other = finding(there, one.id);
    REQUIRE(other != nullptr);
    CHECK(other->measured == Approx(one.measured).margin(1e-6));
    CHECK(other->verdict == one.verdict);
  }
}

TEST_CASE("The site's own figure replaces the book's") {
  const Site site = yard_with({bin_at(0, 0), bin_at(44, 0)});  // 8 ft apart
  Catalogs own = shipped_catalogs();
  own.rules = own.rules.with({{"clear.bin-bin", 12 * ft, Basis::local, "our insurer"}});
  CHECK(verdict(asked(site), "clear.bin-bin") == "pass");
  const Answer answer = ask(site, {}, own);
  REQUIRE(finding(answer, "clear.bin-bin:1-2") != nullptr);
  CHECK(finding(answer, "clear.bin-bin:1-2")->source == "our insurer");
}

// Case 36: NFPA 1 (read): 20 ft.
TEST_CASE("The widest drive is judged for fire engines, as advice") {
  const auto drive = [](double width_ft) { return Drive{.path = {{0, 0}, {50, 0}}, .width_m = width_ft * ft}; };
  CHECK(verdict(asked(yard_with({drive(19.9), drive(12)})), "clear.fire-road:1") == "caution");
  CHECK(verdict(asked(yard_with({drive(14), drive(20.0)})), "clear.fire-road:2") == "pass");
  check_mends(yard_with({drive(19.9)}), "clear.fire-road:1", 1);
}

TEST_CASE("Every finding names a rule of the book") {
  Site site = thrown_yard(4);
  site.items.push_back({next_id(site), "", 0, {}, OverheadLine{.path = {{0, 200}, {400, 200}}, .voltage_v = 69e3}});
  site.items.push_back({next_id(site), "", 0, {}, tank_at(50, 50, 1500, TankContents::ammonia)});
  for (const Finding& found : asked(site).findings) CHECK(shipped_catalogs().rules.has(found.rule));
}
