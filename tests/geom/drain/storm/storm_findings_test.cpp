#include "geom/drain/storm/storm_findings.hpp"

#include <catch2/catch.hpp>

#include "geom/io/rule_book.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

/// A pit 2 m by 3 m and 3 m deep with a pump of 1 l/s.
Site yard() {
  Site site;
  site.units = UnitSystem::metric;
  yardwright::Pit pit;
  pit.body.width_m = 2;
  pit.body.length_m = 3;
  pit.body.depth_m = 3;
  pit.body.pump_m3_per_s = 0.001;
  site.items.push_back({{1}, "Dump", 0, {}, pit});
  return site;
}

/// Water came at 4 l/s for a minute: over 6 m2 that is 2.4 m an hour, or 1.8 m with the pump.
StormStory story(bool pump_works) {
  PitStory pit;
  pit.item = {1};
  pit.floor_m = 97;
  pit.rim_m = 100;
  pit.pump_works = pump_works;
  const double rise_m = pump_works ? 0.03 : 0.04;
  pit.samples = {{0, 98, 0, 0}, {60, 98 + rise_m, 0.004, pump_works ? 0.001 : 0}};
  pit.highest_m = 98 + rise_m;
  pit.in_m3 = 0.24;
  if (!pump_works) {
    pit.wet_s = 39600;
    pit.overflows_s = 39600 + 1800;
    pit.highest_m = 100;
  }
  StormStory told;
  told.pits.push_back(pit);
  told.end_s = 43200;
  return told;
}

std::string note_of(bool pump_works) {
  return judge_storm(yard(), story(pump_works), shipped_rule_book()).front().note;
}

}  // namespace

// By hand: see the story.
TEST_CASE("A pit's finding says how fast it rises, with its pump and without") {
  CHECK(note_of(true).find("it rises by up to 1.80 m an hour, 2.40 m were its pump to fail") != std::string::npos);
}

TEST_CASE("A pit whose pump failed says how long after it was full") {
  const std::string note = note_of(false);
  CHECK(note.find("it rises by up to 2.40 m an hour") != std::string::npos);
  CHECK(note.find("it is full 0.50 h after its pump should have started") != std::string::npos);
}

TEST_CASE("A tile line that turns water away for long is told, one that is full for a minute passes") {
  Site site = yard();
  site.items.push_back({{2}, "Main", 0, {}, TileLine{.path = {{0, 0}, {10, 0}}}});
  for (const double full_s : {60.0, 3600.0}) {
    StormStory told;
    told.tiles.push_back({{2}, {}, 0.01, full_s});
    const Finding finding = judge_storm(site, told, shipped_rule_book()).front();
    CHECK(finding.rule == "drain.storm-tile");
    CHECK(finding.measured == full_s);
    CHECK(finding.verdict == (full_s > 900 ? Verdict::caution : Verdict::pass));
  }
}
