#include "geom/drain/storm/storm.hpp"

#include <tbb/global_control.h>

#include <catch2/catch.hpp>
#include <functional>
#include <random>

#include "geom/drain/storm/rainfall.hpp"
#include "geom/drain/storm/storm_findings.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

/// A yard of 60 m by 60 m with a metre grid, its levels by a function of the place, in a storm of 5 in.
Site yard(const std::function<double(SitePoint)>& level_m) {
  Site site;
  site.ground.levels = drain::ground_of(60, 60, 1, level_m);
  site.storm.rain_m = 5 * 0.0254;
  site.storm.cover = "gravel";
  return site;
}

/// Falls 2 % to the south, with a round hollow 0.5 m deep in its middle.
double hollow_m(SitePoint at) { return 100 + 0.02 * at.y - std::max(0.0, 0.5 * (1 - distance(at, {30, 30}) / 12)); }

ItemId add(Site& site, Thing thing) {
  site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site.items.back().id;
}

StormStory story_of(const Site& site, StormOptions options = {}) {
  const auto story = run_storm(site, design_surface(site), shipped_catalogs(), options);
  REQUIRE(story);
  return *story;
}

StormOptions short_storm() {
  StormOptions options;
  options.start_s = 11.5 * 3600;
  options.length_s = 3600;
  return options;
}

const Finding& finding_of(const Findings& findings, std::string_view rule, ItemId item) {
  const auto found = std::ranges::find(findings, finding_id(rule, {item}), &Finding::id);
  REQUIRE(found != findings.end());
  return *found;
}

Findings judged_again(const Site& site, const StormOptions& options) {
  return judge_storm(site, story_of(site, options), shipped_catalogs().rules);
}

}  // namespace

TEST_CASE("A storm's water is all accounted for on random yards", "[storm]") {
  const unsigned seed = 3105;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> share(0, 1);
  for (int i = 0; i < 6; ++i) {
    const double grade = 0.05 * share(random), wave_m = 0.4 * share(random), x = 40 * share(random);
    Site site =
        yard([&](SitePoint at) { return 50 + grade * at.y + wave_m * std::sin(at.x / 5) * std::cos(at.y / 6); });
    const ItemId first = add(site, Pit{.at = {10 + x, 20}, .body = {.pump_m3_per_s = 0.002 * share(random)}});
    const ItemId second = add(site, Leg{.at = {10 + x, 30}});
    add(site, yardwright::Tunnel{.path = {{10 + x, 20}, {10 + x, 30}}, .from = first, .to = second});
    add(site, Bin{.at = {15 + x / 2, 45}});
    add(site, Culvert{.path = {{20, 50}, {20, 5}}});
    const StormStory story = story_of(site, short_storm());
    CHECK(story.balance.error_ratio() < 1e-9);
    CHECK(story.balance.rain_m3 > 0);
    CHECK(story.left_out.empty());
    // The rain of the balance is the rain of the clouds: the hour's share of the day on every square metre.
    const Rainfall rain = *Rainfall::of(site.storm, shipped_catalogs());
    const double fallen_m = rain.fallen_m(12.5 * 3600) - rain.fallen_m(11.5 * 3600);
    CHECK(story.balance.rain_m3 == Approx(fallen_m * 3600).epsilon(1e-9));
  }
}

TEST_CASE("A pit in a hollow fills, and the curb that is offered keeps it dry", "[storm]") {
  Site site = yard(hollow_m);
  const ItemId pit = add(site, Pit{.at = {30, 30}});
  const StormStory story = story_of(site, short_storm());
  REQUIRE(story.pits.size() == 1);
  CHECK(story.pits[0].rim_s);
  CHECK(story.pits[0].overflows_s);
  const Finding before = finding_of(judge_storm(site, story, shipped_catalogs().rules), "drain.storm-pit", pit);
  CHECK(before.verdict == Verdict::fail);
  REQUIRE(before.mends.size() == 1);
  const Site mended = apply(site, before.mends[0].edits);
  CHECK(finding_of(judged_again(mended, short_storm()), "drain.storm-pit", pit).verdict == Verdict::pass);
}

TEST_CASE("The pump that is offered holds the water of a pit that does not fill", "[storm]") {
  // A large pit at the top of a slope: some water crosses its rim, far from enough to fill it.
  Site site = yard([](SitePoint at) { return 100 + 0.02 * at.y; });
  Pit large{.at = {30, 40}};
  large.body = {.width_m = 3, .length_m = 4, .depth_m = 8};
  const ItemId pit = add(site, large);
  const Finding before = finding_of(judged_again(site, short_storm()), "drain.storm-pit", pit);
  REQUIRE(before.verdict == Verdict::fail);
  bool pump_offered = false;
  for (const Mend& mend : before.mends) {
    pump_offered = pump_offered || mend.quantity == Quantity::flow;
    const Site mended = apply(site, mend.edits);
    CHECK(finding_of(judged_again(mended, short_storm()), "drain.storm-pit", pit).verdict == Verdict::pass);
  }
  CHECK(pump_offered);
}

TEST_CASE("A pit that its pump keeps dry fills when the power fails", "[storm]") {
  Site site = yard(hollow_m);
  Pit pumped{.at = {30, 30}};
  pumped.body.pump_m3_per_s = 0.2;
  const ItemId pit = add(site, pumped);
  StormOptions options = short_storm();
  CHECK(finding_of(judged_again(site, options), "drain.storm-pit", pit).verdict == Verdict::pass);
  options.mishap = Mishap::power_fails;
  CHECK(finding_of(judged_again(site, options), "drain.storm-pit", pit).verdict == Verdict::fail);
  options.mishap = Mishap::pump_fails;
  options.failed_pump = pit;
  CHECK(finding_of(judged_again(site, options), "drain.storm-pit", pit).verdict == Verdict::fail);
  options.failed_pump = {};
  CHECK(finding_of(judged_again(site, options), "drain.storm-pit", pit).verdict == Verdict::pass);
}

TEST_CASE("Water crosses a tunnel into the next pit", "[storm]") {
  Site site = yard(hollow_m);
  const ItemId low = add(site, Pit{.at = {30, 30}});
  Pit high{.at = {30, 50}};
  high.body.rim_height_m = 1;  // nothing comes over this one's rim
  high.body.depth_m = 3;
  const ItemId dry = add(site, high);
  CHECK(finding_of(judged_again(site, short_storm()), "drain.storm-pit", dry).verdict == Verdict::pass);
  add(site, yardwright::Tunnel{.path = {{30, 30}, {30, 50}}, .from = low, .to = dry, .sill_depth_m = 1.5});
  const Finding drowned = finding_of(judged_again(site, short_storm()), "drain.storm-pit", dry);
  CHECK(drowned.verdict == Verdict::fail);
  CHECK(drowned.note.find("tunnel") != std::string::npos);
}

TEST_CASE("A culvert lets the pond behind a bank go", "[storm]") {
  // A bank 1 m high across a slope of 2 %, and a culvert of 18 in under it.
  const auto banked = [](SitePoint at) { return 100 + 0.02 * at.y + (std::abs(at.y - 20) < 1.6 ? 1.0 : 0.0); };
  Site site = yard(banked);
  const ItemId bin = add(site, Bin{.at = {30, 28}, .diameter_m = 8});
  const double without_m = story_of(site, short_storm()).walls[0].deepest_m;
  const ItemId pipe = add(site, Culvert{.path = {{30, 23}, {30, 17}}, .start_depth_m = 0});
  const StormStory with = story_of(site, short_storm());
  CHECK(with.walls[0].item == bin);
  CHECK(with.walls[0].deepest_m < without_m);
  REQUIRE(with.culverts.size() == 1);
  CHECK(with.culverts[0].item == pipe);
  CHECK(with.culverts[0].highest_m3_per_s > 0.005);
  StormOptions blocked = short_storm();
  blocked.mishap = Mishap::inlets_half_blocked;
  CHECK(story_of(site, blocked).culverts[0].highest_m3_per_s < with.culverts[0].highest_m3_per_s);
}

TEST_CASE("A storm tells the same story at any number of threads", "[storm]") {
  Site site = yard(hollow_m);
  add(site, Pit{.at = {30, 30}});
  const auto told = [&](std::size_t threads) {
    const tbb::global_control limit{tbb::global_control::max_allowed_parallelism, threads};
    const StormStory story = story_of(site, short_storm());
    return std::tuple{story.steps, story.deepest_m.values(), story.balance.left_m3, story.pits[0].in_m3};
  };
  CHECK(told(1) == told(3));
}

TEST_CASE("A storm stops when it is told to", "[storm]") {
  const Site site = yard(hollow_m);
  const auto story = run_storm(site, design_surface(site), shipped_catalogs(), short_storm(),
                               [](double done_ratio) { return done_ratio < 0.3; });
  REQUIRE(story);
  CHECK(story->stopped);
  CHECK(story->end_s < 11.9 * 3600);
  CHECK(story->balance.error_ratio() < 1e-9);
}

TEST_CASE("A storm that cannot be run says why", "[storm]") {
  Site bare;
  const auto without_ground = run_storm(bare, design_surface(bare), shipped_catalogs());
  REQUIRE_FALSE(without_ground);
  CHECK(without_ground.error()[0].what.find("ground") != std::string::npos);
  Site unknown = yard(hollow_m);
  unknown.storm.type = StormType::own;
  const auto without_curve = run_storm(unknown, design_surface(unknown), shipped_catalogs());
  REQUIRE_FALSE(without_curve);
  CHECK(without_curve.error()[0].what.find("over the day") != std::string::npos);
  Site odd = yard(hollow_m);
  odd.storm.cover = "moss";
  const auto without_cover = run_storm(odd, design_surface(odd), shipped_catalogs());
  REQUIRE_FALSE(without_cover);
  CHECK(without_cover.error()[0].what.find("moss") != std::string::npos);
}

TEST_CASE("What is not in the storm is told", "[storm]") {
  Site site = yard(hollow_m);
  const ItemId tunnel = add(site, yardwright::Tunnel{.path = {{30, 30}, {30, 50}}});
  const auto findings = judged_again(site, short_storm());
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].verdict == Verdict::not_checked);
  CHECK(findings[0].note.find(title_of(*find(site, tunnel))) != std::string::npos);
}

TEST_CASE("A site's own value for a rule of the storm is what its findings ask", "[storm]") {
  Site site = yard(hollow_m);
  const ItemId pit = add(site, Pit{.at = {30, 30}});
  const ItemId bin = add(site, Bin{.at = {30, 45}});
  StormOptions minute = short_storm();
  minute.length_s = 60;
  const StormStory story = story_of(site, minute);
  const RuleBook own = shipped_catalogs().rules.with(
      {{"drain.storm-pit", 0.7, Basis::local, "set here"}, {"drain.storm-wall", 0.09, Basis::local, "set here"}});
  const Findings findings = judge_storm(site, story, own);
  CHECK(finding_of(findings, "drain.storm-pit", pit).required == 0.7);
  CHECK(finding_of(findings, "drain.storm-wall", bin).required == 0.09);
}

TEST_CASE("Every sample has a time of its own, and every story as many samples", "[storm]") {
  Site site = yard(hollow_m);
  add(site, Pit{.at = {30, 30}});
  add(site, Culvert{.path = {{20, 50}, {20, 5}}});
  const StormStory story = story_of(site, short_storm());
  CHECK(std::ranges::adjacent_find(story.times_s, std::greater_equal{}) == story.times_s.end());
  CHECK(story.times_s.front() == 11.5 * 3600);
  CHECK(story.times_s.back() == 12.5 * 3600);
  CHECK(story.leaving_m3_per_s.size() == story.times_s.size());
  CHECK(story.pits[0].samples.size() == story.times_s.size());
  CHECK(story.culverts[0].flow_m3_per_s.size() == story.times_s.size());
  CHECK(story.leaving_m3_per_s.back() > 0);
  CHECK(story.frames.back().time_s > story.frames[story.frames.size() - 2].time_s);
}

TEST_CASE("A pit whose small pump runs is full when it turns water away", "[storm]") {
  Site site = yard(hollow_m);
  Pit small{.at = {30, 30}};
  small.body.pump_m3_per_s = 0.003;
  const ItemId pit = add(site, small);
  const StormStory story = story_of(site, short_storm());
  CHECK(story.pits[0].overflows_s);
  const Finding finding = finding_of(judge_storm(site, story, shipped_catalogs().rules), "drain.storm-pit", pit);
  CHECK(std::ranges::none_of(finding.mends, [](const Mend& mend) { return mend.quantity == Quantity::flow; }));
}

TEST_CASE("The curb of a pit that drank a hollow dry stands over where the hollow spills", "[storm]") {
  Site site = yard(hollow_m);
  Pit large{.at = {30, 30}};
  large.body = {.width_m = 5, .length_m = 6, .depth_m = 12};
  const ItemId pit = add(site, large);
  const Finding before = finding_of(judged_again(site, short_storm()), "drain.storm-pit", pit);
  REQUIRE(before.verdict == Verdict::fail);
  bool curb_offered = false;
  for (const Mend& mend : before.mends) {
    if (mend.quantity != Quantity::length) continue;
    curb_offered = true;
    CHECK(finding_of(judged_again(apply(site, mend.edits), short_storm()), "drain.storm-pit", pit).verdict ==
          Verdict::pass);
  }
  CHECK(curb_offered);
}

TEST_CASE("Rain falls into the hole of a pit and no wider, and not through a roof", "[storm]") {
  // A curbed pit of 2 x 2 m on coarse cells of 5 m: nothing comes over its rim, the rain of an hour stands in it.
  Site site;
  const GridFrame frame{{0, 0}, 5, 20, 20};
  site.ground.levels = {frame, std::vector<float>(frame.cells(), 100.0F)};
  site.storm.rain_m = 5 * 0.0254;
  PitBody body{.width_m = 2, .length_m = 2, .depth_m = 2, .rim_height_m = 2};
  add(site, Pit{.at = {52.5, 52.5}, .body = body});
  add(site, Receiving{.at = {22.5, 22.5}, .type = ReceivingKind::drive_through, .pit = body});
  const StormStory story = story_of(site, short_storm());
  const Rainfall rain = *Rainfall::of(site.storm, shipped_catalogs());
  const double fallen_m = rain.fallen_m(12.5 * 3600) - rain.fallen_m(11.5 * 3600);
  REQUIRE(story.pits.size() == 2);
  CHECK(story.pits[0].highest_m - story.pits[0].floor_m == Approx(fallen_m).epsilon(1e-6));
  CHECK(story.pits[1].highest_m == story.pits[1].floor_m);
  CHECK(story.balance.rain_m3 == Approx(fallen_m * 10000).epsilon(1e-9));
  CHECK(story.balance.error_ratio() < 1e-9);
}

TEST_CASE("A storm that was stopped passes nothing", "[storm]") {
  Site site = yard([](SitePoint at) { return 100 + 0.02 * at.y; });
  Pit curbed{.at = {30, 40}};
  curbed.body.rim_height_m = 2;
  add(site, curbed);
  const auto story = run_storm(site, design_surface(site), shipped_catalogs(), short_storm(),
                               [](double done_ratio) { return done_ratio < 0.1; });
  REQUIRE(story);
  for (const Finding& finding : judge_storm(site, *story, shipped_catalogs().rules)) {
    CHECK(finding.verdict != Verdict::pass);
    if (finding.verdict == Verdict::not_checked) CHECK(finding.title.ends_with("so far"));
  }
}

TEST_CASE("Pits and pipes that cannot be in a storm are named", "[storm]") {
  Site site = yard(hollow_m);
  Pit flat{.at = {30, 30}};
  flat.body.width_m = 0;
  const ItemId no_width = add(site, flat), far = add(site, Pit{.at = {900, 900}});
  const ItemId uphill = add(site, Culvert{.path = {{20, 5}, {20, 50}}, .start_depth_m = 0});
  const StormStory story = story_of(site, short_storm());
  CHECK(story.pits.empty());
  for (const ItemId id : {no_width, far, uphill}) {
    const std::string name = title_of(*find(site, id));
    CHECK(std::ranges::any_of(story.left_out, [&](const std::string& words) { return words.starts_with(name); }));
  }
}
