#include "geom/drain/storm/how_often.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/drain/storm/storm_findings.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

/// A pit in a round hollow of a slope of 2 %, and a bin at its shore.
Site yard() {
  Site site;
  site.ground.levels = drain::ground_of(50, 50, 1, [](SitePoint at) {
    return 100 + 0.02 * at.y - std::max(0.0, 0.5 * (1 - distance(at, {25, 25}) / 12));
  });
  site.storm.cover = "gravel";
  yardwright::Pit pit;
  pit.at = {25, 25};
  pit.body.rim_height_m = 0.2;
  site.items.push_back({{1}, "Dump", 0, {}, pit});
  site.items.push_back({{2}, "East", 0, {}, Bin{.at = {33, 25}, .diameter_m = 8}});
  for (const auto& [years, rain_in] :
       {std::pair{1.0, 1.0}, {2.0, 1.5}, {5.0, 2.2}, {10.0, 3.0}, {25.0, 4.0}, {50.0, 5.0}, {100.0, 7.0}})
    site.storm.table.rows.push_back({years, rain_in * 0.0254});
  return site;
}

StormOptions short_storm() {
  StormOptions options;
  options.start_s = 11.5 * 3600;
  options.length_s = 3600;
  return options;
}

Frequencies frequencies_of(const Site& site, const Progress& progress = {}) {
  const auto found = how_often(site, design_surface(site), shipped_catalogs(), short_storm(), progress);
  REQUIRE(found);
  return *found;
}

StormStory story_of(Site site, double rain_m) {
  site.storm.rain_m = rain_m;
  return *run_storm(site, design_surface(site), shipped_catalogs(), short_storm());
}

const HowOften& of_event(const Frequencies& frequencies, std::string_view finding, Event event) {
  const auto found = std::ranges::find_if(
      frequencies.all, [&](const HowOften& one) { return one.finding == finding && one.event == event; });
  REQUIRE(found != frequencies.all.end());
  return *found;
}

}  // namespace

TEST_CASE("A pit fills in the storm of the row that is told, and not in that of the row before", "[storm]") {
  const Site site = yard();
  const Frequencies frequencies = frequencies_of(site);
  const auto& full = of_event(frequencies, "drain.storm-pit:1", Event::pit_full);
  REQUIRE(full.recurrence.at_most_years);
  REQUIRE(full.recurrence.at_least_years);
  const auto rain_m = [&](double years) {
    return std::ranges::find(site.storm.table.rows, years, &RainOfYears::years)->rain_m;
  };
  CHECK(story_of(site, rain_m(*full.recurrence.at_most_years)).pits[0].overflows_s);
  CHECK_FALSE(story_of(site, rain_m(*full.recurrence.at_least_years)).pits[0].overflows_s);
}

TEST_CASE("Bins are told of as pits are, and each storm of the table is run once at most", "[storm]") {
  const Site site = yard();
  const Frequencies frequencies = frequencies_of(site);
  const auto& wet = of_event(frequencies, "drain.storm-wall:2", Event::falls_short);
  CHECK(wet.item == ItemId{2});
  CHECK(frequencies.storms <= 7);
  CHECK(frequencies.storms >= 3);
  Findings findings = judge_storm(site, story_of(site, site.storm.rain_m), shipped_catalogs().rules);
  tell_how_often(findings, frequencies, 30);
  for (const Finding& finding : findings) CHECK(finding.note.find("by the rain table") != std::string::npos);
}

TEST_CASE("Without a rain table it says what to read, and one that is stopped tells nothing", "[storm]") {
  Site site = yard();
  const Frequencies stopped = frequencies_of(site, [](double) { return false; });
  CHECK(stopped.stopped);
  CHECK(stopped.all.empty());
  site.storm.table = {};
  const auto refused = how_often(site, design_surface(site), shipped_catalogs(), short_storm());
  REQUIRE_FALSE(refused);
  CHECK(sentence(refused.error().front()).find("yardwright rain") != std::string::npos);
}
