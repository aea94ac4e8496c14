#include "geom/drain/drain.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>

#include "geom/drain/raster.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254;

/// A yard of 100 m by 100 m with a metre grid, its levels by a function of the place.
Site yard(const std::function<double(SitePoint)>& level_m) {
  Site site;
  site.ground.levels = ground_of(100, 100, 1, level_m);
  return site;
}

/// Falls 2 % to the south, with a round hollow 0.6 m deep in its middle.
double hollow_m(SitePoint at) { return 100 + 0.02 * at.y - std::max(0.0, 0.6 * (1 - distance(at, {50, 50}) / 15)); }
double slope_m(SitePoint at) { return 100 + 0.02 * at.y + 0.0005 * std::abs(at.x - 50); }

ItemId add(Site& site, Thing thing) {
  site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site.items.back().id;
}

Answer asked(const Site& site) {
  return ask(site, DesignSurface{site.ground.levels, site.ground.levels}, shipped_catalogs());
}

const Finding* finding_of(const Answer& answer, std::string_view rule, ItemId item) {
  const auto found = std::ranges::find(answer.findings, finding_id(rule, {item}), &Finding::id);
  return found == answer.findings.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("Without ground nothing about water is checked, and it says what to run", "[drain]") {
  Site site;
  add(site, Pit{});
  const Answer answer = asked(site);
  REQUIRE(answer.findings.size() == 1);
  CHECK(answer.findings[0].verdict == Verdict::not_checked);
  CHECK(answer.findings[0].note.find("yardwright ground") != std::string::npos);
}

TEST_CASE("An empty yard is not passed in silence", "[drain]") {
  const Answer answer = asked(yard(slope_m));
  REQUIRE(answer.findings.size() == 1);
  CHECK(answer.findings[0].verdict == Verdict::not_checked);
}

TEST_CASE("A pit in a hollow floods, and the curb that is offered keeps it dry by the freeboard", "[drain]") {
  for (const Thing& thing : {Thing{Pit{{50, 50}}}, Thing{Leg{{50, 50}}}, Thing{Receiving{{50, 50}}}}) {
    Site site = yard(hollow_m);
    const ItemId pit = add(site, thing);
    const Answer answer = asked(site);
    const Finding* finding = finding_of(answer, "drain.rim-freeboard", pit);
    REQUIRE(finding != nullptr);
    CHECK(finding->verdict == Verdict::fail);
    CHECK(finding->measured == Approx(answer.pits[0].rim_level_m - answer.pits[0].pond->level_m));
    CHECK(finding->measured < 0);
    REQUIRE_FALSE(finding->mends.empty());
    const Answer mended = asked(apply(site, finding->mends[0].edits));
    const Finding* after = finding_of(mended, "drain.rim-freeboard", pit);
    REQUIRE(after != nullptr);
    CHECK(after->verdict == Verdict::pass);
    CHECK(after->margin < 0.001);
  }
}

namespace {

/// Of the one hollow of this yard.
double under_water_m3(const Flow& flow, const PondAtPit& pond) {
  double sum_m = 0;
  for (std::size_t i = 0; i < flow.depression.size(); ++i) {
    if (flow.depression[i] == pond.depression) sum_m += std::max(0.0, pond.level_m - flow.level_m[i]);
  }
  return sum_m * flow.frame.cell_area_m2();
}

}  // namespace

TEST_CASE("The pond around a pit holds the runoff of its catchment, or spills", "[drain]") {
  Site site = yard(hollow_m);
  add(site, Pit{{50, 50}});
  for (const double rain_in : {2.0, 3.0, 5.0, 9.0}) {
    site.storm.rain_m = rain_in * inch;
    const Answer answer = asked(site);
    REQUIRE(answer.pits.size() == 1);
    const PitWater& pit = answer.pits[0];
    REQUIRE(pit.pond);
    CHECK(pit.runoff_m3 == Approx(runoff_depth_m(site.storm.rain_m, 82) * pit.catchment_m2));
    const double stands_m3 = under_water_m3(answer.flow, *pit.pond);
    CHECK(stands_m3 == Approx(std::min(pit.runoff_m3, pit.pond->holds_m3)).epsilon(1e-6));
    CHECK(pit.pond->level_m <= pit.pond->spill_level_m);
  }
}

TEST_CASE("A site's own freeboard stands in place of the book's", "[drain]") {
  Site site = yard(hollow_m);
  const ItemId pit = add(site, Pit{{50, 50}});
  site = apply(site, SetRule{{"drain.rim-freeboard", 1 * ft, Basis::local, "the county asks for it"}});
  CHECK(finding_of(asked(site), "drain.rim-freeboard", pit)->required == 1 * ft);
}

TEST_CASE("A flush pit across a valley is a caution that a curb mends", "[drain]") {
  Site site = yard(slope_m);
  const ItemId pit = add(site, Pit{{50, 20}});
  const Answer answer = asked(site);
  const Finding* finding = finding_of(answer, "drain.flow-past-rim", pit);
  REQUIRE(finding != nullptr);
  CHECK(finding->verdict == Verdict::caution);
  CHECK(finding->measured == Approx(answer.pits[0].catchment_m2));
  CHECK_FALSE(answer.pits[0].pond);
  REQUIRE_FALSE(finding->mends.empty());
  CHECK(finding_of(asked(apply(site, finding->mends[0].edits)), "drain.flow-past-rim", pit)->verdict == Verdict::pass);
}

TEST_CASE("A pit on a knoll passes", "[drain]") {
  Site site = yard([](SitePoint at) { return 100 - 0.03 * distance(at, {50, 50}); });
  const ItemId pit = add(site, Pit{{50, 50}});
  CHECK(finding_of(asked(site), "drain.flow-past-rim", pit)->verdict == Verdict::pass);
}

TEST_CASE("A pit off the known ground is not checked", "[drain]") {
  Site site = yard(slope_m);
  const ItemId pit = add(site, Pit{{-50, 50}});
  CHECK(finding_of(asked(site), "drain.rim-freeboard", pit)->verdict == Verdict::not_checked);
}

TEST_CASE("Covers are weighted by the ground that drains to the pit", "[drain]") {
  Site site = yard(hollow_m);
  add(site, Pit{{50, 50}});
  add(site, Cover{{{0, 0}, {100, 0}, {100, 100}, {0, 100}}, "paved", SoilGroup::c});
  CHECK(asked(site).pits[0].curve_number == Approx(98));
  std::get<Cover>(site.items[1].thing).outline = {{0, 0}, {50, 0}, {50, 100}, {0, 100}};
  CHECK(asked(site).pits[0].curve_number == Approx((98 + 82) / 2.0).margin(0.5));
}

TEST_CASE("The parts of a catchment's curve number are all its ground, the largest first, each cover and soil once",
          "[drain]") {
  Site site = yard(hollow_m);
  add(site, Pit{{50, 50}});
  add(site, Cover{{{0, 0}, {42, 0}, {42, 100}, {0, 100}}, "gravel", SoilGroup::c});
  add(site, Cover{{{58, 0}, {100, 0}, {100, 100}, {58, 100}}, "gravel", SoilGroup::c});
  add(site, Cover{{{42, 80}, {58, 80}, {58, 100}, {42, 100}}, "gravel", SoilGroup::d});
  const PitWater pit = asked(site).pits[0];
  REQUIRE(pit.covers.size() == 3);
  CHECK(std::ranges::is_sorted(pit.covers, std::greater{}, &CoverPart::area_m2));
  // gravel 89 on soil C and 91 on D, as a state's handbook prints them (assets/covers.json)
  const auto has = [&](SoilGroup soil, double number) {
    return std::ranges::any_of(pit.covers,
                               [&](const CoverPart& part) { return part.soil == soil && part.curve_number == number; });
  };
  CHECK(has(SoilGroup::c, 82));
  CHECK(has(SoilGroup::c, 89));
  CHECK(has(SoilGroup::d, 91));
  double sum_m2 = 0, sum = 0;
  for (const CoverPart& part : pit.covers) {
    sum_m2 += part.area_m2;
    sum += part.area_m2 * part.curve_number;
  }
  CHECK(sum_m2 == Approx(pit.catchment_m2));
  CHECK(pit.curve_number == Approx(sum / sum_m2));
}

TEST_CASE("The farthest water of a pit begins on the ground, not on a roof", "[drain]") {
  Site site = yard(slope_m);
  add(site, Pit{{50, 20}});
  add(site, Building{.at = {50, 90}, .length_m = 30, .width_m = 16});
  const PitWater pit = asked(site).pits[0];
  REQUIRE_FALSE(pit.concentration.segments.empty());
  for (const TravelSegment& segment : pit.concentration.segments) CHECK(segment.slope_ratio < 0.1);
  CHECK(pit.longest_way.front() == pit.concentration.segments.front().begins);
}

TEST_CASE("A cover that the catalogue lacks is named, and without the storm's own no pit is judged", "[drain]") {
  Site site = yard(hollow_m);
  const ItemId pit = add(site, Pit{{50, 50}});
  add(site, Cover{{{0, 0}, {9, 0}, {9, 9}}, "moss", SoilGroup::c});
  CHECK(std::ranges::count(asked(site).findings, Verdict::not_checked, &Finding::verdict) == 1);
  site.storm.cover = "lichen";
  CHECK(finding_of(asked(site), "drain.rim-freeboard", pit)->verdict == Verdict::not_checked);
}

TEST_CASE("Water takes the times of sheet and shallow flow along a plane", "[drain]") {
  Site site = yard([](SitePoint at) { return 100 + 0.02 * at.y; });
  const Flow flow = yard_flow(site, {site.ground.levels, site.ground.levels});
  const CoverMap covers = cover_map(site, shipped_catalogs(), flow.frame);
  const std::vector<Cell> way = flow_path(flow, cell_at(flow.frame, {50, 99.5}));
  const Concentration parts = concentration_along(flow, covers, {}, way, 3 * inch);
  CHECK(parts.length_m(Travel::sheet) == Approx(30));
  CHECK(parts.length_m(Travel::shallow) == Approx(69));
  CHECK(parts.time_s(Travel::sheet) == Approx(sheet_flow_s(0.15, 30, 0.02, 3 * inch)).epsilon(1e-4));
  CHECK(parts.time_s(Travel::shallow) == Approx(69 / shallow_flow_m_per_s(0.02, false)).epsilon(1e-4));
}

TEST_CASE("Bins turn water aside and their roofs shed on all sides", "[drain]") {
  Site site = yard(slope_m);
  add(site, Bin{{50, 50}});
  const Flow flow = yard_flow(site, {site.ground.levels, site.ground.levels});
  const Cell uphill = cell_at(flow.frame, {50, 90});
  for (const Cell cell : flow_path(flow, uphill))
    CHECK(distance(flow.frame.centre(flow.frame.cell_at_offset(static_cast<std::size_t>(cell))), {50, 50}) > 5.4);
  const auto sheds_at = [&](SitePoint roof) { return flow_path(flow, cell_at(flow.frame, roof)); };
  for (const SitePoint roof : {SitePoint{53, 50}, {47, 50}, {50, 53}, {50, 47}}) {
    const auto path = sheds_at(roof);
    CHECK(path.size() > 5);
    const SitePoint beside = flow.frame.centre(flow.frame.cell_at_offset(static_cast<std::size_t>(path[4])));
    CHECK(distance(beside, {50, 50}) > distance(roof, {50, 50}));
  }
}

TEST_CASE("The ground falls away from a bin on a mound and not on a flat", "[drain]") {
  const auto verdict_at = [](double grade, BinFloor floor) {
    Site site = yard([grade](SitePoint at) { return 100 - grade * distance(at, {50, 50}); });
    const ItemId bin = add(site, Bin{.at = {50, 50}, .floor = floor});
    const char* rule = floor == BinFloor::flat_channels ? "drain.slope-away-flat" : "drain.slope-away-raised";
    const Answer answer = asked(site);
    CHECK(finding_of(answer, rule, bin)->measured == Approx(grade).margin(0.002));
    return finding_of(answer, rule, bin)->verdict;
  };
  CHECK(verdict_at(0.06, BinFloor::flat_channels) == Verdict::pass);
  CHECK(verdict_at(0.03, BinFloor::flat_channels) == Verdict::fail);
  CHECK(verdict_at(0.03, BinFloor::raised) == Verdict::pass);
  CHECK(verdict_at(0.0, BinFloor::raised) == Verdict::caution);
}

TEST_CASE("A bin hemmed in on every side is said to be unchecked", "[drain]") {
  Site site = yard(slope_m);
  const ItemId bin = add(site, Bin{.at = {50, 50}, .diameter_m = 4});
  add(site, Building{.at = {50, 50}, .length_m = 30, .width_m = 30});
  CHECK(finding_of(asked(site), "drain.slope-away-raised", bin)->verdict == Verdict::not_checked);
}

TEST_CASE("Water can stand against a bin in a hollow and not against one on a slope", "[drain]") {
  Site low = yard(hollow_m);
  const ItemId bin = add(low, Bin{.at = {50, 45}, .floor = BinFloor::flat_channels});
  CHECK(finding_of(asked(low), "drain.water-at-bin", bin)->verdict == Verdict::fail);
  const Finding standing = *finding_of(asked(low), "drain.water-at-bin", bin);
  REQUIRE_FALSE(standing.mends.empty());
  for (const Mend& mend : standing.mends) {
    const Site mended = apply(low, mend.edits);
    const Answer after = ask(mended, design_surface(mended), shipped_catalogs());
    CHECK(finding_of(after, "drain.water-at-bin", bin)->verdict == Verdict::pass);
  }
  Site high = yard([](SitePoint at) { return 100 + 0.02 * at.y; });
  const ItemId dry = add(high, Bin{.at = {50, 45}});
  CHECK(finding_of(asked(high), "drain.water-at-bin", dry)->verdict == Verdict::pass);
}

TEST_CASE("A drive's bank ponds the valley until a culvert lies under it", "[drain]") {
  Site site = yard(
      [](SitePoint at) { return slope_m(at) + 0.02 * std::abs(at.x - 50) + (std::abs(at.y - 40) < 3 ? 0.8 : 0.0); });
  add(site, Pit{{50, 80}});
  const Answer banked = asked(site);
  REQUIRE_FALSE(banked.ponds.empty());
  CHECK(banked.ponds[0].hollow.depth_m > 0.5);
  add(site, Culvert{.path = {{50, 44}, {50, 36}}});
  CHECK(asked(site).ponds.empty());
}

TEST_CASE("A catch basin without a tile line is told to carry nothing, until one runs under it", "[drain]") {
  Site site = yard(hollow_m);
  const ItemId basin = add(site, CatchBasin{.at = {50, 50}});
  const Answer idle = asked(site);
  REQUIRE(finding_of(idle, "drain.pipes", basin) != nullptr);
  CHECK(finding_of(idle, "drain.pipes", basin)->verdict == Verdict::not_checked);
  add(site, TileLine{.path = {{50, 50}, {50, 10}}});
  CHECK(finding_of(asked(site), "drain.pipes", basin) == nullptr);
}

TEST_CASE("A downspout off the ground is told to carry nothing, once", "[drain]") {
  Site site = yard(hollow_m);
  const ItemId shed = add(site, Building{.at = {50, 80}, .length_m = 20, .width_m = 10});
  const ItemId spout = add(site, Downspout{.at = {-30, 80}, .of = shed});
  const Answer off = asked(site);
  REQUIRE(finding_of(off, "drain.pipes", spout) != nullptr);
  CHECK(finding_of(off, "drain.pipes", spout)->verdict == Verdict::not_checked);
  CHECK(std::ranges::count(off.findings, finding_id("drain.pipes", {spout}), &Finding::id) == 1);
  std::get<Downspout>(site.items.back().thing).at = {38, 80};
  CHECK(finding_of(asked(site), "drain.pipes", spout) == nullptr);
}

TEST_CASE("The same yard gives the same answer", "[drain]") {
  Site site = yard(hollow_m);
  add(site, Pit{{50, 50}});
  add(site, Bin{{30, 60}});
  CHECK(asked(site).findings == asked(site).findings);
}
