#include "geom/clear/line_setback.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/clear/asked_yard.hpp"

using namespace yardwright;
using namespace yardwright::clear;

namespace {

/// A bin whose port is `port_ft` up, and a line along north whose nearest point is `gap_ft` from its wall.
Site bin_and_line(double port_ft, double gap_ft, double conductor_ft) {
  Bin bin = bin_at(0, 0, 30);
  bin.foundation_height_m = 1 * ft;
  bin.inlet_over_peak_m = 0;
  bin.eave_height_m = port_ft * ft - 1 * ft - bin.diameter_m / 2 * tan(bin.roof_slope);
  const double east_m = (15 + gap_ft) * ft;
  return yard_with(
      {bin, OverheadLine{.path = {{east_m, -100}, {east_m, 100}}, .lowest_conductor_m = conductor_ft * ft}});
}

Site with_spout(Site site) {
  site.items.push_back({{3}, "", 0, {}, Leg{.at = {-300, 0}}});
  site.items.push_back({{4}, "", 0, {}, Spout{.from = {3}, .to = {1}}});
  return site;
}

}  // namespace

// Case 24: a public power district's table (read): V = 35 ft asks for 105.5 ft.
TEST_CASE("A bin that augers fill keeps the published distance from a line") {
  CHECK(verdict(asked(bin_and_line(35, 105.5, 18.5)), "clear.line-portable") == "pass");
  const Answer near = asked(bin_and_line(35, 105.4, 18.5));
  CHECK(verdict(near, "clear.line-portable:1-2") == "fail");
  CHECK(finding(near, "clear.line-portable:1-2")->required == Approx(105.5 * ft));
  CHECK(finding(near, "clear.line-portable:1-2")->note.find("ask the utility") != std::string::npos);
  check_mends(bin_and_line(35, 95, 18.5), "clear.line-portable:1-2", 2);
  check_mends(bin_and_line(35, -4, 18.5), "clear.line-portable:1-2", 1);
}

// Case 27: 18 ft over the ports (read).
TEST_CASE("A line straight above passes where it is 18 ft over the port") {
  CHECK(verdict(asked(bin_and_line(25, -15, 43.0)), "clear.line-portable") == "pass");
  CHECK(verdict(asked(bin_and_line(25, -15, 42.9)), "clear.line-portable:1-2") == "fail");
}

// Case 28: a co-op's leaflet (read): 15 ft from the wall; the sloped part is still the utility's to tell.
TEST_CASE("A bin that a spout fills keeps 15 ft, and is cautioned about augers") {
  const Answer near = asked(with_spout(bin_and_line(35, 14.9, 18.5)));
  CHECK(verdict(near, "clear.line-permanent:1-2") == "fail");
  const Answer kept = asked(with_spout(bin_and_line(35, 15.0, 18.5)));
  CHECK(finding(kept, "clear.line-permanent:1-2") == nullptr);
  CHECK(verdict(kept, "clear.line-portable:1-2") == "caution");
}

TEST_CASE("Ground that rises under the line lifts it") {
  Site site = bin_and_line(25, 20, 43.0 - 10);
  CHECK(verdict(asked(site), "clear.line-permanent") == "pass");
  CHECK(verdict(asked(site), "clear.line-portable:1-2") == "fail");
  const GridFrame frame{{-50, -150}, 1, 100, 300};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    levels.push_back(frame.centre(frame.cell_at_offset(i)).x > 8 ? static_cast<float>(11 * ft) : 0.0f);
  }
  const LevelGrid grid{frame, levels};
  const DesignSurface sloped{grid, grid};
  const Answer lifted = ask(site, sloped, shipped_catalogs());
  CHECK(verdict(lifted, "clear.line-portable") == "pass");
}

TEST_CASE("A leg keeps 15 ft from a line, and a line over a roof is measured upward") {
  const OverheadLine line{.path = {{0, -100}, {0, 100}}};
  CHECK(verdict(asked(yard_with({Leg{.at = {4, 0}}, line})), "clear.line-permanent:1-2") == "fail");
  check_mends(yard_with({Leg{.at = {4, 0}}, line}), "clear.line-permanent:1-2", 1);
  const Site under = yard_with({building_at(-20, 0), line});  // 18.5 ft over a 16 ft roof
  REQUIRE(finding(asked(under), "clear.line-roof:1-2") != nullptr);
  CHECK(finding(asked(under), "clear.line-roof:1-2")->measured == Approx(2.5 * ft));
  const Answer before = asked(under);
  const Finding* roof = finding(before, "clear.line-roof:1-2");
  REQUIRE_FALSE(roof->mends.empty());
  for (const Mend& mend : roof->mends) {
    INFO(mend.action << " by " << mend.change);
    const Answer again = asked(yardwright::apply(under, mend.edits));
    const Finding* same = finding(again, roof->id);  // none: out from under the line nothing is asked of a roof
    CHECK((same == nullptr || same->verdict == Verdict::pass));
  }
}

TEST_CASE("A transmission line is said to need more than the published clearances") {
  const Answer answer =
      asked(yard_with({bin_at(0, 0), OverheadLine{.path = {{90, -50}, {90, 50}}, .voltage_v = 69e3}}));
  CHECK(verdict(answer, "clear.line-voltage:2") == "not-checked");
  REQUIRE(answer.strips.size() == 1);
  CHECK(answer.strips.front().half_width_m == Approx(15 * ft));  // 29 CFR 1926.1408 (read)
  CHECK(area_m2(answer.strips.front().keep_clear) == Approx(100 * 30 * ft));
  CHECK(answer.rings.size() == 1);
}
