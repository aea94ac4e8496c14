#include "geom/drain/diversion.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/drain/storm/storm.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048;

/// A slope of 5 % that leans a little to the east, with a shallow valley down its middle and a dip in the valley.
double valley_m(SitePoint at) {
  const double dip = 0.3 * std::max(0.0, 1 - distance(at, {60, 30}) / 8);
  return 100 + 0.05 * at.y - 0.002 * at.x + 0.004 * std::abs(at.x - 60) - dip;
}

Site yard(double pit_east_m = 60, double pit_north_m = 30) {
  Site site;
  site.ground.levels = ground_of(120, 120, 1, valley_m);
  yardwright::Pit pit;
  pit.at = {pit_east_m, pit_north_m};
  site.items.push_back({{1}, "Dump pit", 0, {}, pit});
  return site;
}

Answer asked(const Site& site) { return ask(site, design_surface(site), shipped_catalogs()); }

const Finding& of_rim(const Answer& answer) {
  const auto found = std::ranges::find_if(answer.findings, [](const Finding& finding) {
    return finding.items == std::vector<ItemId>{{1}} &&
           (finding.rule == "drain.rim-freeboard" || finding.rule == "drain.flow-past-rim");
  });
  REQUIRE(found != answer.findings.end());
  return *found;
}

std::vector<Mend> diversions(const Answer& answer) {
  std::vector<Mend> mends;
  for (const Mend& mend : of_rim(answer).mends) {
    if (mend.along_m > 0) mends.push_back(mend);
  }
  return mends;
}

const Item& built(const Mend& mend) { return std::get<PutItem>(mend.edits.front()).item; }

Site shorter(const Site& site, const Mend& mend, double by_m) {
  Item item = built(mend);
  SitePath& path = *path_of(item.thing);
  double cut_m = by_m;
  while (path.size() > 2 && distance(path[0], path[1]) <= cut_m) {
    cut_m -= distance(path[0], path[1]);
    path.erase(path.begin());
  }
  path[0] = between(path[0], path[1], std::min(cut_m / distance(path[0], path[1]), 1.0));
  return apply(site, PutItem{item});
}

}  // namespace

TEST_CASE("A berm and a swale that turn the water away pass once they are built", "[drain][diversion]") {
  for (const double pit_north_m : {30.0, 45.0}) {
    const Site site = yard(60, pit_north_m);
    const Answer answer = asked(site);
    REQUIRE(of_rim(answer).verdict != Verdict::pass);
    const auto mends = diversions(answer);
    REQUIRE(mends.size() == 2);
    for (const Mend& mend : mends) {
      INFO(mend.action << " " << mend.becomes << " m, " << mend.along_m << " m long, pit at " << pit_north_m);
      CHECK(of_rim(asked(apply(site, mend.edits))).verdict == Verdict::pass);
      CHECK(mend.along_m == Approx(length(*path_of(built(mend).thing))));
      CHECK(mend.along_m < 120);
    }
  }
}

TEST_CASE("A berm's length is the least of its line that passes", "[drain][diversion]") {
  const Site site = yard();
  for (const Mend& mend : diversions(asked(site)))
    CHECK(of_rim(asked(shorter(site, mend, 5))).verdict != Verdict::pass);
}

// The storm is another computation than the one by which the mend was found: it moves water step by step.
TEST_CASE("In the storm less than half of the water comes to the pit behind its berm", "[drain][diversion]") {
  Site site = yard(60, 45);
  PitBody& pit = *pit_body(site.items.front().thing);
  pit.width_m = 4, pit.length_m = 6, pit.depth_m = 9;  // holds all that comes
  const Catalogs catalogs = shipped_catalogs();
  storm::StormOptions options;
  options.frame_every_s = 0;
  const auto brought_m3 = [&](const Site& one) {
    return storm::run_storm(one, design_surface(one), catalogs, options)->pits.at(0).in_m3;
  };
  const double before_m3 = brought_m3(site);
  REQUIRE(before_m3 > 20);
  for (const Mend& mend : diversions(asked(site))) {
    INFO(mend.action);
    CHECK(brought_m3(apply(site, mend.edits)) < before_m3 / 2);
  }
}

// Manning's V with sides of 4 and of the ground's 20 to 1, HEC-22 4th ed., chapter 4: Q = (1/n) A R^(2/3) S^(1/2).
TEST_CASE("A berm is as high as its water runs deep, with freeboard, and no lower than a foot", "[drain][diversion]") {
  Site site = yard(60, 45);
  site.storm.rain_m = 0.25;
  const Answer answer = asked(site);
  const auto mends = diversions(answer);
  REQUIRE_FALSE(mends.empty());
  const double height_m = mends.front().becomes, wet_m = height_m - 0.3 * ft;
  const double area_m2 = (4 + 20) / 2.0 * wet_m * wet_m, around_m = wet_m * (std::hypot(1, 4) + std::hypot(1, 20));
  const double carries = area_m2 * std::pow(area_m2 / around_m, 2.0 / 3) * std::sqrt(0.005) / 0.03;
  CHECK(height_m >= 1 * ft - 1e-9);
  CHECK(carries > answer.pits[0].peak.peak_m3_per_s);
}

TEST_CASE("It keeps clear of bins, of drives and of the neighbour's land", "[drain][diversion]") {
  Site site = yard(60, 30);
  site.items.push_back({{2}, "Lane", 0, {}, Drive{.path = {{0, 62}, {120, 62}}}});
  site.items.push_back({{3}, "East", 0, {}, Bin{.at = {85, 45}, .diameter_m = 9}});
  site.lot.corners = {{5, 5}, {115, 5}, {115, 115}, {5, 115}};
  for (const Mend& mend : diversions(asked(site))) {
    const SitePath& path = *path_of(built(mend).thing);
    for (const SitePoint at : path) {
      CHECK(at.x > 5);
      CHECK(at.x < 115);
      CHECK(std::abs(at.y - 62) > 4);
    }
    CHECK(nearest_on_path(path, {85, 45}).distance_m > 4.5 + 1);
  }
}

TEST_CASE("Where no berm can pass none is offered, and one that is stopped says that mends were left",
          "[drain][diversion]") {
  Site bowl = yard(60, 60);
  bowl.ground.levels = ground_of(120, 120, 1, [](SitePoint at) { return 100 + 0.02 * distance(at, {60, 60}); });
  bowl.storm.rain_m = 0.5;
  CHECK(diversions(asked(bowl)).empty());
  const Site site = yard();
  const Answer hurried = ask(site, design_surface(site), shipped_catalogs(), {MendSearch{false}});
  CHECK(diversions(hurried).empty());
  CHECK_FALSE(hurried.mends_sought);
}

TEST_CASE("A site's own fall, freeboard and least size shape the berm", "[drain][diversion]") {
  const auto berm_of = [](const char* rule, double own) {
    Site site = yard(60, 45);
    if (own > 0) site = yardwright::apply(site, SetRule{{rule, own, Basis::local, "set here"}});
    const auto mends = diversions(asked(site));
    REQUIRE_FALSE(mends.empty());
    return mends.front();
  };
  const Mend plain = berm_of("", 0);
  CHECK(berm_of("drain.diversion-size", 0.7).becomes >= 0.7);
  CHECK(berm_of("drain.diversion-freeboard", 0.6).becomes > plain.becomes);
  CHECK(*path_of(built(berm_of("drain.diversion-fall", 0.01)).thing) != *path_of(built(plain).thing));
}
