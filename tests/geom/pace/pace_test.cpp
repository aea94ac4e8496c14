#include "geom/pace/pace.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;

namespace {

constexpr double ft = 0.3048;

Site yard_with(std::vector<Thing> things) {
  Site site;
  for (Thing& thing : things) site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site;
}

pace::Answer asked(const Site& site, const Catalogs& catalogs = shipped_catalogs()) {
  return pace::ask(site, design_surface(site), catalogs);
}

const Finding* finding(const pace::Answer& answer, std::string_view id) {
  const auto found = std::ranges::find(answer.findings, id, &Finding::id);
  return found == answer.findings.end() ? nullptr : &*found;
}

Bin bin(double diameter_ft, double eave_ft, BinUse use = BinUse::dry_store) {
  Bin made;
  made.diameter_m = diameter_ft * ft;
  made.eave_height_m = eave_ft * ft;
  made.floor = BinFloor::flat_channels;
  made.sump_radius_m = 0;
  made.use = use;
  return made;
}

}  // namespace

TEST_CASE("Dry and wet capacity add up by grain") {
  const auto answer = asked(yard_with({bin(36, 24), bin(36, 24), bin(36, 24, BinUse::wet_holding)}));
  REQUIRE(answer.capacity.size() == 1);
  // 21,713.4 bu each: exact geometry (computed), corn at 23 deg (read).
  CHECK(answer.capacity[0].dry.as_bushels() == Approx(2 * 21713.4).margin(1));
  CHECK(answer.capacity[0].wet.as_bushels() == Approx(21713.4).margin(1));
  CHECK(answer.bins.size() == 3);
}

TEST_CASE("The pack factor of the site counts in the capacity") {
  Catalogs catalogs = shipped_catalogs();
  catalogs.rules = catalogs.rules.with({{"pace.pack", 1.05, Basis::local, "weighed"}});
  const auto answer = asked(yard_with({bin(36, 24)}), catalogs);
  CHECK(answer.capacity[0].dry.as_bushels() == Approx(1.05 * 21713.4).margin(1));
}

TEST_CASE("An unknown grain is said to be unknown, and holds nothing in silence") {
  Bin unknown = bin(36, 24);
  unknown.grain = "moon dust";
  const auto answer = asked(yard_with({unknown}));
  const Finding* found = finding(answer, "pace.stays:1");
  REQUIRE(found != nullptr);
  CHECK(found->verdict == Verdict::not_checked);
  CHECK(found->note.find("moon dust") != std::string::npos);
  CHECK(answer.capacity.empty());
}

TEST_CASE("Every mend of a bin that keeps too much makes it pass") {
  for (const Bin& poor : {bin(90, 15), bin(36, 24, BinUse::wet_holding)}) {
    const Site site = yard_with({poor});
    const auto answer = asked(site);
    const std::string id = poor.use == BinUse::wet_holding ? "pace.stays-wet:1" : "pace.stays:1";
    const Finding* before = finding(answer, id);
    REQUIRE(before != nullptr);
    CHECK(before->verdict == Verdict::caution);
    REQUIRE_FALSE(before->mends.empty());
    for (const Mend& mend : before->mends) {
      INFO(mend.action);
      const auto again = asked(yardwright::apply(site, mend.edits));
      CHECK(finding(again, id)->verdict == Verdict::pass);
    }
  }
}

TEST_CASE("The higher eave is the least that passes") {
  Site site = yard_with({bin(90, 15)});
  const auto answer = asked(site);
  Item mended = std::get<PutItem>(finding(answer, "pace.stays:1")->mends.front().edits.front()).item;
  std::get<Bin>(mended.thing).eave_height_m -= 0.001;
  CHECK(finding(asked(yardwright::apply(site, Edits{PutItem{mended}})), "pace.stays:1")->verdict == Verdict::caution);
}

TEST_CASE("The wanted storage is judged once it is set") {
  Catalogs catalogs = shipped_catalogs();
  CHECK(finding(asked(yard_with({bin(36, 24)})), "pace.capacity")->verdict == Verdict::not_checked);
  const double wanted_m3 = GrainVolume::bushels(30000).as_cubic_metres();
  catalogs.rules = catalogs.rules.with({{"pace.capacity", wanted_m3, Basis::local, "600 acres"}});
  CHECK(finding(asked(yard_with({bin(36, 24)}), catalogs), "pace.capacity")->verdict == Verdict::fail);
  CHECK(finding(asked(yard_with({bin(36, 24), bin(36, 24)}), catalogs), "pace.capacity")->verdict == Verdict::pass);
}

TEST_CASE("What the plan cannot answer is not checked, where the question makes sense") {
  CHECK(worst(asked(Site{}).findings) == Verdict::not_checked);
  const auto answer = asked(yard_with({Bin{}, Dryer{}}));
  for (const char* id : {"pace.wet-holding", "pace.bottleneck", "pace.days"}) {
    INFO(id);
    REQUIRE(finding(answer, id) != nullptr);
    CHECK(finding(answer, id)->verdict == Verdict::not_checked);
    CHECK_FALSE(finding(answer, id)->note.empty());
  }
}

TEST_CASE("A bin that is not built yet is made just large enough for the harvest") {
  Catalogs catalogs = shipped_catalogs();
  const double wanted_m3 = GrainVolume::bushels(80000).as_cubic_metres();
  catalogs.rules = catalogs.rules.with({{"pace.capacity", wanted_m3, Basis::local, "600 acres"}});
  Site site = yard_with({bin(36, 24), bin(48, 24)});
  CHECK(finding(asked(site, catalogs), "pace.capacity")->mends.empty());
  site.items[1].phase = 1;
  const pace::Answer answer = asked(site, catalogs);
  const Finding* short_of = finding(answer, "pace.capacity");
  REQUIRE(short_of->verdict == Verdict::fail);
  REQUIRE(short_of->mends.size() == 2);  // wider, taller
  for (const Mend& mend : short_of->mends) {
    const Site mended = apply(site, mend.edits);
    CHECK(finding(asked(mended, catalogs), "pace.capacity")->verdict == Verdict::pass);
    // A step less would not do: a bin comes in steps of 3 ft of width and 32 in of height.
    Site less = mended;
    Bin& larger = std::get<Bin>(less.items[1].thing);
    if (mend.becomes == larger.diameter_m)
      larger.diameter_m -= 3 * ft;
    else
      larger.eave_height_m -= 32 * 0.0254;
    CHECK(finding(asked(less, catalogs), "pace.capacity")->verdict == Verdict::fail);
  }
}
