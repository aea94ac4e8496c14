#include "geom/sheet/section_lines.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame metre{{0, 0}, 1, 200, 200};

LevelGrid falling(SiteVector way, double grade) {
  return ground_of(metre, [=](SitePoint at) { return 100 - grade * dot(at - SitePoint{}, way); });
}

Pit pit_at(SitePoint at, double depth_m) {
  Pit pit;
  pit.at = at;
  pit.body.depth_m = depth_m;
  return pit;
}

std::vector<SectionLine> lines_of(const Site& site) { return section_lines(site, design_surface(site)); }

Item named(int number, std::string name, Thing thing) { return {{number}, std::move(name), 0, {}, std::move(thing)}; }

}  // namespace

TEST_CASE("Without a drawn one the section runs through the deepest pit, down the ground's fall") {
  const SiteVector way = unit(SiteVector{3, -4});
  Site site = site_with(falling(way, 0.02), std::vector<Thing>{pit_at({60, 60}, 2)});
  site.items.push_back(named(9, "Dump", pit_at({100, 100}, 3)));
  const auto lines = lines_of(site);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].letter == "A");
  CHECK(lines[0].title == "through Dump, down the ground's fall");
  CHECK(nearest_on_path(lines[0].path, {100, 100}).distance_m < 1e-9);
  const SiteVector along = unit(lines[0].path.back() - lines[0].path.front());
  CHECK(dot(along, way) == Approx(1).margin(1e-4));
  CHECK(length(lines[0].path) == Approx(200 * foot_m).margin(1));
}

TEST_CASE("On level ground it runs west to east, and no farther than the ground is known") {
  Site site = site_with(flat_ground(metre, 50), std::vector<Thing>{pit_at({10, 100}, 2)});
  const auto lines = lines_of(site);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].path.front().x >= 0);
  CHECK(lines[0].path.front().x < 1);
  CHECK(lines[0].path.front().y == lines[0].path.back().y);
}

TEST_CASE("Named dimensions take its place; dimensions without a name cut nothing") {
  Site site = site_with(flat_ground(metre, 50), std::vector<Thing>{pit_at({100, 100}, 2)});
  site.items.push_back(named(5, "", Dimension{{{10, 10}, {40, 10}}}));
  CHECK(lines_of(site).front().title.starts_with("through"));
  site.items.push_back(named(6, "North to south", Dimension{{{100, 150}, {100, 20}}}));
  site.items.push_back(named(7, "Far away", Dimension{{{900, 900}, {950, 900}}}));
  const auto lines = lines_of(site);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].title == "North to south");
  CHECK(lines[0].path == SitePath{{100, 150}, {100, 20}});
}

TEST_CASE("Every culvert is cut along, 30 ft beyond its ends, which alone are drawn on the plan") {
  Culvert culvert;
  culvert.path = {{80, 100}, {80, 90}, {90, 90}};
  Site site = site_with(flat_ground(metre, 50), std::vector<Thing>{});
  site.items.push_back(named(3, "Road culvert", culvert));
  const auto lines = lines_of(site);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].title == "along Road culvert");
  CHECK(lines[0].path.front() == SitePoint{80, 100 + 30 * foot_m});
  CHECK(lines[0].path.back() == SitePoint{90 + 30 * foot_m, 90});
  const PlanParts parts = section_line_parts(lines, 0.5);
  CHECK(std::ranges::count_if(parts.shapes, [](const Mark& mark) { return std::holds_alternative<LineMark>(mark); }) ==
        2);
}

TEST_CASE("Letters go on after Z") {
  Site site = site_with(flat_ground(metre, 50), std::vector<Thing>{});
  for (int i = 1; i <= 28; ++i) site.items.push_back(named(i, "Cut", Dimension{{{10, 5.0 * i}, {60, 5.0 * i}}}));
  const auto lines = lines_of(site);
  REQUIRE(lines.size() == 28);
  CHECK(lines[25].letter == "Z");
  CHECK(lines[26].letter == "AA");
  CHECK(lines[27].letter == "AB");
}

TEST_CASE("The mark at a section's ends points to the side that is seen: from left to right on the sheet") {
  Site site = site_with(flat_ground(metre, 50), std::vector<Thing>{});
  site.items.push_back(named(1, "Cut", Dimension{{{10, 50}, {90, 50}}}));
  const PlanParts parts = section_line_parts(lines_of(site), 0.5);
  int marks = 0;
  for (const Mark& mark : parts.shapes) {
    const SymbolMark* symbol = std::get_if<SymbolMark>(&mark);
    if (symbol == nullptr) continue;
    CHECK(std::get<AreaMark>(symbol->marks.at(0)).rings[0][0].y < 0);  // to the north, where y goes down the paper
    ++marks;
  }
  CHECK(marks == 2);
}

TEST_CASE("Without ground, and without pit, culvert or named line, there is nothing to cut") {
  Site site;
  site.items.push_back(named(1, "Dump", pit_at({0, 0}, 3)));
  CHECK(lines_of(site).empty());
  CHECK(lines_of(site_with(flat_ground(metre, 50), std::vector<Thing>{})).empty());
}
