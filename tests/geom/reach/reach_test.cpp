#include "geom/reach/reach.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "geom/io/catalogs.hpp"
#include "geom/reach/solid.hpp"
#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::scenes;

namespace {

reach::Answer asked(const Site& site) { return reach::ask(site, design_surface(site), shipped_catalogs()); }

const Finding& finding_with(const Findings& findings, std::string_view rule) {
  const auto found = std::ranges::find(findings, rule, &Finding::rule);
  REQUIRE(found != findings.end());
  return *found;
}

Site with_spout_state(Site site, GrainState state) {
  std::get<Spout>(site.items.back().thing).state = state;
  return site;
}

}  // namespace

TEST_CASE("A leg's discharge height for a spout is the inlet plus the fall over the run") {
  // Worked case, bin A: D 36 ft, eave 24, run 30, 1 ft foundation, 30 degree roof, no cap: 65.392 ft at 45 degrees
  // and 57.999 ft at 37. Exact geometry, computed.
  const Site site = one_bin_yard(60, 30);
  CHECK(asked(with_spout_state(site, GrainState::wet)).spouts.front().discharge_needed_m / ft ==
        Approx(65.392).margin(0.001));
  CHECK(asked(site).spouts.front().discharge_needed_m / ft == Approx(57.999).margin(0.001));
}

TEST_CASE("The governing bin is the one with the highest required outlet, not the farthest") {
  // Worked case: B (D 48, eave 24, run 55) needs 93.856 ft; C (D 60, eave 40.333, run 45) needs 103.654 at 45 degrees.
  const auto needed_ft = [](double diameter_ft, double eave_ft, double run_ft) {
    Site site = with_spout_state(one_bin_yard(120, run_ft), GrainState::wet);
    Bin& bin = std::get<Bin>(site.items[1].thing);
    bin.diameter_m = diameter_ft * ft;
    bin.eave_height_m = eave_ft * ft;
    return asked(site).spouts.front().discharge_needed_m / ft;
  };
  CHECK(needed_ft(48, 24, 55) == Approx(93.856).margin(0.001));
  CHECK(needed_ft(60, 40.333, 45) == Approx(103.654).margin(0.001));
}

TEST_CASE("A spout's length is its run over the cosine of its slope") {
  // 60 ft run at 45 degrees is 84.853 ft long. Exact geometry.
  const reach::SpoutLine line{{0, 0}, {60, 0}, 60, 0};
  CHECK(line.slope().as_degrees() == Approx(45));
  CHECK(line.length_m() == Approx(84.853).margin(0.001));
}

TEST_CASE("Each mend of a spout that is too flat makes it pass when applied") {
  const Site site = one_bin_yard(50, 40);
  const Finding flat = finding_with(asked(site).findings, "reach.slope-dry");
  REQUIRE(flat.verdict == Verdict::fail);
  REQUIRE(flat.mends.size() >= 2);
  for (const Mend& mend : flat.mends) {
    INFO(mend.action);
    const Finding mended = finding_with(asked(apply(site, mend.edits)).findings, "reach.slope-dry");
    CHECK(mended.verdict == Verdict::pass);
    CHECK(mended.margin < 0.001);  // degrees: the least change leaves nothing to spare
  }
}

TEST_CASE("A bin without a spout is named, and the mend draws one") {
  Site site = one_bin_yard(70, 30);
  site.items.pop_back();
  const Finding unfilled = finding_with(asked(site).findings, "reach.filled");
  REQUIRE(unfilled.verdict == Verdict::fail);
  const Site mended = apply(site, unfilled.mends.front().edits);
  CHECK(std::ranges::count(asked(mended).findings, "reach.filled", &Finding::rule) == 0);
  CHECK(asked(mended).spouts.size() == 1);
}

TEST_CASE("More spouts than outlets fail, and the mend gives the distributor enough") {
  Site site = one_bin_yard(70, 30);
  std::get<Leg>(site.items.front().thing).outlets = 1;
  site.items.push_back({{4}, "", 0, std::nullopt, Spout{.from = leg_id, .to = bin_id}});
  const Finding crowded = finding_with(asked(site).findings, "reach.outlets");
  REQUIRE(crowded.verdict == Verdict::fail);
  CHECK(finding_with(asked(apply(site, crowded.mends.front().edits)).findings, "reach.outlets").verdict ==
        Verdict::pass);
}

TEST_CASE("A spout that would cross another bin's roof is found, and raising the leg clears it") {
  Site site = one_bin_yard(80, 90);
  Bin tall{.at = {45 * ft, 0}, .diameter_m = 30 * ft, .eave_height_m = 48 * ft};
  site.items.push_back({{4}, "Between", 0, std::nullopt, tall});
  const Finding crossing = finding_with(asked(site).findings, "reach.clear-of-roofs");
  REQUIRE(crossing.verdict == Verdict::fail);
  REQUIRE(crossing.mends.size() == 1);
  const Finding mended =
      finding_with(asked(apply(site, crossing.mends.front().edits)).findings, "reach.clear-of-roofs");
  CHECK(mended.verdict == Verdict::pass);
  CHECK(mended.margin < 0.001);
}

TEST_CASE(
    "What stands against the receiver's inlet, where no taller leg clears it, is moved aside by the least that does") {
  Site site = one_bin_yard(80, 90);
  const Bin tall{.at = {90 * ft, 31 * ft}, .diameter_m = 60 * ft, .eave_height_m = 48 * ft};
  site.items.push_back({{4}, "Beside", 0, std::nullopt, tall});
  const Finding against = finding_with(asked(site).findings, "reach.clear-of-roofs");
  REQUIRE(against.verdict == Verdict::fail);
  REQUIRE(against.mends.size() == 1);
  CHECK(against.mends.front().action == "move Beside");
  const Finding mended = finding_with(asked(apply(site, against.mends.front().edits)).findings, "reach.clear-of-roofs");
  CHECK(mended.verdict == Verdict::pass);
  CHECK(mended.margin < 0.001);
}

TEST_CASE("Clear distance to a bin equals brute force along the spout on random bins") {
  const unsigned seed = 4711;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place{-15, 15}, size{3, 12}, level{4, 30};
  const DesignSurface flat;
  for (int i = 0; i < 200; ++i) {
    const Bin bin{.at = {place(random), place(random)}, .diameter_m = size(random), .eave_height_m = size(random)};
    const Item item{{9}, "", 0, std::nullopt, bin};
    const reach::SpoutLine line{
        {place(random), place(random)}, {place(random), place(random)}, level(random), level(random)};
    const auto solid = reach::solid_of(item, flat);
    double brute_m = 1e9;
    for (int step = 0; step <= 4000; ++step) {
      const double part = step / 4000.0;
      const SitePoint at = between(line.from, line.to, part);
      const reach::SpoutLine spot{at, at, line.from_level_m - part * line.drop_m(),
                                  line.from_level_m - part * line.drop_m()};
      brute_m = std::min(brute_m, reach::clear_distance(spot, *solid).distance_m);
    }
    CHECK(reach::clear_distance(line, *solid).distance_m == Approx(brute_m).margin(0.02));
  }
}

TEST_CASE("The ring of reach on flat ground is a circle of fall over the tangent of the slope") {
  const Site site = one_bin_yard(70, 30);
  const reach::Answer answer = asked(site);
  REQUIRE(answer.rings.size() == 1);
  const double inlet_ft = 1 + 24 + 18 * std::tan(30 * M_PI / 180);
  for (const SitePoint& point : answer.rings.front().ring) {
    CHECK(length(point - SitePoint{}) / ft == Approx((70 - inlet_ft) / std::tan(37 * M_PI / 180)).margin(1e-3));
  }
}

TEST_CASE("An empty yard is not checked, and says what to place") {
  const reach::Answer answer = asked(Site{});
  CHECK(worst(answer.findings) == Verdict::not_checked);
  CHECK(answer.findings.front().note.find("leg") != std::string::npos);
}

TEST_CASE("A spout that joins nothing is not checked, whatever it names") {
  Site site = one_bin_yard(70, 30);
  std::get<Spout>(site.items.back().thing).to = leg_id;
  CHECK(finding_with(asked(site).findings, "reach.slope-dry").verdict == Verdict::not_checked);
}
