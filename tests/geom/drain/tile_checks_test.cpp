#include "geom/drain/tile_checks.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/drain/drain.hpp"
#include "geom/drain/idle_drains.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254;

/// Level but for a pond 40 m square that falls to a basin in its middle; a tile line leads out of it to the south.
Site yard(double diameter_m) {
  Site site;
  site.ground.levels = ground_of(100, 100, 1, [](SitePoint at) {
    const double off = std::max(std::abs(at.x - 50), std::abs(at.y - 50));
    return off > 20 ? 100 - 0.001 * (off - 20) : 99 + off / 20;
  });
  TileLine line{.path = {{50.5, 50.5}, {50.5, 0.5}}};
  line.diameter_m = diameter_m;
  line.start_depth_m = 0.5, line.end_depth_m = 2;
  site.items.push_back({{1}, "Main", 0, {}, line});
  site.items.push_back({{2}, "Basin", 0, {}, CatchBasin{.at = {50.5, 50.5}}});
  return site;
}

Answer asked(const Site& site) { return ask(site, design_surface(site), shipped_catalogs()); }

const Finding& of_rule(const Answer& answer, std::string_view rule) {
  const auto found = std::ranges::find(answer.findings, rule, &Finding::rule);
  REQUIRE(found != answer.findings.end());
  return *found;
}

TileSystem system_of(const Site& site) { return tile_system(site, design_surface(site)); }

std::vector<TileRunoff> runoff_of(const Site& site) {
  const DesignSurface surface = design_surface(site);
  const CoverMap covers = cover_map(site, shipped_catalogs(), surface.design.frame());
  return tile_runoff(site, tile_system(site, surface), yard_flow(site, surface), covers, channel_map(site, surface));
}

}  // namespace

// HEC-22 4th ed., equation 4.1 (SI): Q = 0.312 D^(8/3) S^(1/2) / n of a full round pipe.
TEST_CASE("A tile line carries full what the published formula says", "[drain]") {
  const TilePipe pipe{12 * inch, 100, 99, 98, 0.012};
  CHECK(carries_full_m3_per_s(pipe) ==
        Approx(0.312 * std::pow(12 * inch, 8.0 / 3) * std::sqrt(0.01) / 0.012).epsilon(0.002));
  CHECK(carries_full_m3_per_s({12 * inch, 100, 99, 99, 0.012}) == 0);
}

TEST_CASE("The least size that carries a flow is one that is sold, and the one below it does not carry it", "[drain]") {
  const TilePipe pipe{4 * inch, 100, 99, 98, 0.012};
  for (const double flow : {0.01, 0.03, 0.1, 0.3}) {
    const auto size_m = least_tile_diameter_m(pipe, flow);
    REQUIRE(size_m);
    TilePipe sized = pipe;
    sized.diameter_m = *size_m;
    CHECK(carries_full_m3_per_s(sized) >= flow);
    sized.diameter_m = *size_m * 0.74;  // no two sizes over 4 inches lie farther apart than 18 and 24
    CHECK(carries_full_m3_per_s(sized) < flow);
  }
  CHECK_FALSE(least_tile_diameter_m(pipe, 1000));
}

TEST_CASE("What comes to a line is the ground that drains to its inlets, times its rational C", "[drain]") {
  const Site site = yard(8 * inch);
  const auto runoff = runoff_of(site);
  REQUIRE(runoff.size() == 1);
  const double c = find(shipped_catalogs().covers, site.storm.cover)->rational_c;
  CHECK(runoff[0].runoff_area_m2 == Approx(c * 42 * 42));  // the cells just over the brim fall steepest into it
  CHECK(runoff[0].time_s > 0);
}

TEST_CASE("A roof on a downspout counts by its share, and areas and times go on down the lines", "[drain]") {
  Site site = yard(8 * inch);
  site.items.push_back({{3}, "Bin", 0, {}, Bin{.at = {80, 80}, .diameter_m = 10}});
  site.items.push_back({{4}, "Side", 0, {}, TileLine{.path = {{80, 75}, {50.5, 30}}}});
  site.items.push_back({{5}, "Downspout", 0, {}, Downspout{.at = {80, 75}, .of = {3}, .share_ratio = 0.5}});
  const auto alone = runoff_of(yard(8 * inch)), both = runoff_of(site);
  REQUIRE(both.size() == 2);
  const double roof_m2 = 0.5 * 0.95 * 3.14159265 * 25;
  CHECK(both[0].runoff_area_m2 == Approx(roof_m2).epsilon(0.001));
  CHECK(both[1].runoff_area_m2 == Approx(alone[0].runoff_area_m2 + roof_m2).epsilon(0.001));
  CHECK(both[1].time_s == alone[0].time_s);
}

// The rational method, HEC-22 4th ed., chapter 4: Q = C i A.
TEST_CASE("A line that is too small is told with the size that carries the storm", "[drain]") {
  const Site site = yard(4 * inch);
  const Answer answer = asked(site);
  const Finding& finding = of_rule(answer, "drain.tile-size");
  CHECK(finding.verdict == Verdict::caution);
  const auto runoff = runoff_of(site);
  const MassCurve curve = curve_of(site.storm.type, site.storm.own_curve, shipped_catalogs().storms);
  const double flow = runoff[0].runoff_area_m2 * greatest_intensity_m_per_s(curve, site.storm.rain_m, runoff[0].time_s);
  CHECK(finding.measured == Approx(carries_full_m3_per_s(system_of(site).lines[0].pipe) / flow));
  REQUIRE(finding.mends.size() == 1);
  CHECK(of_rule(asked(yardwright::apply(site, finding.mends[0].edits)), "drain.tile-size").verdict == Verdict::pass);
}

TEST_CASE("A line into which nothing runs, or of an unknown storm, is not passed in silence", "[drain]") {
  Site site = yard(8 * inch);
  site.items.pop_back();
  CHECK(of_rule(asked(site), "drain.tile-size").verdict == Verdict::not_checked);
  Site unknown = yard(8 * inch);
  unknown.storm.type = StormType::own;
  CHECK(of_rule(asked(unknown), "drain.tile-size").verdict == Verdict::not_checked);
}

TEST_CASE("A culvert that rises, or lies off the ground, is told at once", "[drain]") {
  const Site site = yard(8 * inch);
  const DesignSurface surface = design_surface(site);
  const Culvert falls{.path = {{45, 5}, {45, 0.5}}, .start_depth_m = 0.2, .end_depth_m = 0.5};
  CHECK(why_idle(falls, surface).empty());
  Culvert rises = falls;
  std::swap(rises.start_depth_m, rises.end_depth_m);
  CHECK(why_idle(rises, surface).find("rises") != std::string::npos);
  Culvert off = falls;
  off.path.back() = {45, -20};
  CHECK(why_idle(off, surface).find("outside the known ground") != std::string::npos);
  Site with_it = site;
  with_it.items.push_back({{7}, "Pipe", 0, {}, off});
  CHECK(of_rule(asked(with_it), "drain.pipes").items == std::vector<ItemId>{{7}});
}
