#include "editor/session/yard_fields.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace yardwright;
using namespace yardwright::session;

namespace {

const FieldRow& row(const std::vector<FieldRow>& rows, const std::string& key) {
  const auto found = std::ranges::find(rows, key, &FieldRow::key);
  REQUIRE(found != rows.end());
  return *found;
}

Site typed(const Site& site, std::string_view key, std::string_view text) {
  const auto edit = with_yard_field(site, key, text);
  INFO(key << " = " << text);
  REQUIRE(edit);
  return yardwright::apply(site, *edit);
}

}  // namespace

TEST_CASE("Every field of title, storm, tie and phases is shown and can be typed back unchanged") {
  Site site;
  site.name = "Home";
  site.title.owner = "A farmer";
  site.phases = {"existing", "dryer"};
  site.storm.type = StormType::own;
  Catalogs catalogs;
  for (const YardPart part : {YardPart::title, YardPart::storm, YardPart::tie, YardPart::phases}) {
    for (const FieldRow& shown : yard_rows(site, part, catalogs)) {
      INFO(shown.key);
      if (!shown.text.empty()) CHECK(typed(site, shown.key, shown.text).name == site.name);
    }
  }
  CHECK(yard_rows(site, YardPart::title, catalogs).size() == 6);
  CHECK(yard_rows(site, YardPart::storm, catalogs).size() == 9);
  CHECK(yard_rows(site, YardPart::phases, catalogs).size() == 2);
}

TEST_CASE("A table of the rain is asked only of a storm of one's own") {
  Site site;
  const auto shows_table = [&] {
    const auto rows = yard_rows(site, YardPart::storm, {});
    return std::ranges::find(rows, "storm.distribution", &FieldRow::key) != rows.end();
  };
  CHECK_FALSE(shows_table());
  site.storm.type = StormType::own;
  CHECK(shows_table());
}

TEST_CASE("The storm's depth is typed in either unit") {
  const Site site;
  CHECK(typed(site, "storm.rain", "6in").storm.rain_m == Approx(0.1524));
  CHECK(typed(site, "storm.rain", "150 mm").storm.rain_m == Approx(0.150));
  CHECK(row(yard_rows(typed(site, "storm.rain", "6in"), YardPart::storm, {}), "storm.rain").text == "6 in");
  CHECK(typed(site, "storm.type", "III").storm.type == StormType::iii);
  CHECK(typed(site, "storm.type", "own").storm.type == StormType::own);
  CHECK(typed(site, "storm.distribution", "0 0, 12 0.5, 24 1").storm.own_curve.points.size() == 3);
  const auto falling = with_yard_field(site, "storm.distribution", "0 0, 12 0.5, 13 0.4, 24 1");
  REQUIRE_FALSE(falling.has_value());
  CHECK(falling.error().what == "the share falls from 0.5 to 0.4 at 13 h");
  CHECK(falling.error().where == "own distribution");
  CHECK(typed(site, "storm.soil", "a").storm.soil == SoilGroup::a);
}

TEST_CASE("The title block, the tie and a phase take what is typed and leave the rest") {
  Site site;
  site.ground.source = "a survey";
  CHECK(typed(site, "title.name", "North place").name == "North place");
  CHECK(typed(site, "title.owner", "R. Lund").title.owner == "R. Lund");
  CHECK(typed(site, "tie.epsg", "26915").tie.epsg == 26915);
  CHECK(typed(site, "tie.epsg", "26915").ground.source == "a survey");
  CHECK(typed(site, "phases.0", "today").phases == std::vector<std::string>{"today"});
}

TEST_CASE("What cannot be taken is refused") {
  const Site site;
  for (const auto& [key, text] : {std::pair{"storm.rain", "wet"},
                                  {"storm.rain", "99 m"},
                                  {"storm.hail", "1"},
                                  {"tie.epsg", "x"},
                                  {"phases.7", "late"},
                                  {"phases.0", ""},
                                  {"nothing", "1"},
                                  {"storm", "1"},
                                  {"", ""}}) {
    INFO(key << " = " << text);
    CHECK_FALSE(with_yard_field(site, key, text));
  }
}

TEST_CASE("The last phase goes only while nothing is built or taken away in it") {
  Site site = yardwright::apply(Site{}, phase_added(Site{}));
  REQUIRE(site.phases.size() == 2);
  REQUIRE(last_phase_removed(site));
  CHECK(yardwright::apply(site, *last_phase_removed(site)).phases.size() == 1);
  CHECK_FALSE(last_phase_removed(Site{}));
  site.items.push_back({{1}, "", 1, {}, Bin{}});
  CHECK_FALSE(last_phase_removed(site));
  site.items.front() = {{1}, "", 0, 1, Bin{}};
  CHECK_FALSE(last_phase_removed(site));
}
