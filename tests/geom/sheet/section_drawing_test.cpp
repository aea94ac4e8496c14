#include "geom/sheet/section_drawing.hpp"

#include <catch2/catch.hpp>

#include "geom/sheet/letter_widths.hpp"
#include "geom/sheet/page.hpp"
#include "geom/sheet/palette.hpp"
#include "geom/sheet/section_page.hpp"
#include "geom/sheet/section_water_marks.hpp"
#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame metre{{0, 0}, 1, 400, 60};
const SitePath eastward{{10, 30}, {210, 30}};  // 200 m
constexpr double hair_mm = 1e-6;

SectionView view_of(LevelGrid ground, std::vector<Thing> things = {}, const SitePath& path = eastward) {
  const Site site = site_with(std::move(ground), std::move(things));
  return section_view(site, design_surface(site), path);
}

template <class Kind>
std::vector<Kind> all(const Drawing& drawing) {
  std::vector<Kind> found;
  for (const Mark& mark : drawing.marks)
    if (const Kind* kind = std::get_if<Kind>(&mark)) found.push_back(*kind);
  return found;
}

/// The box of words on the paper.
SheetBox box_of(const TextMark& words, const Placement& placement) {
  const SheetPoint at = on_paper(placement, true, words.at);
  const double wide_mm = width_of_words_mm(words.text, words.height_mm);
  const double share = words.anchor == Anchor::left ? 0 : words.anchor == Anchor::right ? 1 : 0.5;
  const double left_mm = at.x + words.offset_mm.x - wide_mm * share, middle_mm = at.y + words.offset_mm.y;
  return {{left_mm, middle_mm - words.height_mm / 2}, {left_mm + wide_mm, middle_mm + words.height_mm / 2}};
}

bool meet(const SheetBox& a, const SheetBox& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// The solid line of the design ground.
LineMark ground_line(const Drawing& drawing) {
  for (const LineMark& line : all<LineMark>(drawing))
    if (line.stroke.colour == palette::ink && line.stroke.width_mm == 0.5) return line;
  return {};
}

}  // namespace

TEST_CASE("A slope is drawn at the scale and the exaggeration that are said", "[sheet][section]") {
  const auto plane = ground_of(metre, [](SitePoint at) { return 100 + 0.02 * at.x; });
  const SectionDrawing section = section_drawing(view_of(plane), {240, 80, UnitSystem::metric, {}});
  const LineMark line = ground_line(section.drawing);
  REQUIRE(line.points.size() == 201);
  const SheetPoint from = on_paper(section.placement, true, line.points.front()),
                   to = on_paper(section.placement, true, line.points.back());
  CHECK((to.x - from.x) * section.metres_per_mm == Approx(200));
  // Closed form: 200 m at 2 % rise 4 m.
  CHECK((from.y - to.y) * section.metres_per_mm / section.exaggeration == Approx(4).margin(1e-3));
  CHECK(section.exaggeration > 1);
  CHECK(exaggeration_words(1) == "true to scale");
  CHECK(exaggeration_words(5) == "levels drawn 5 times as large");
}

TEST_CASE("A wanted scale is kept, and a cliff makes the whole drawing smaller", "[sheet][section]") {
  const auto flat = section_drawing(view_of(flat_ground(metre, 5)), {240, 80, UnitSystem::metric, 1.0});
  CHECK(flat.metres_per_mm == 1);
  const auto cliff = ground_of(metre, [](SitePoint at) { return at.x < 100 ? 0.0 : 300.0; });
  const auto steep = section_drawing(view_of(cliff), {240, 80, UnitSystem::metric, {}});
  CHECK(steep.exaggeration == 1);
  CHECK(steep.metres_per_mm > 300.0 / 80);
}

TEST_CASE("Everything of a section lies on its paper", "[sheet][section]") {
  const unsigned seed = GENERATE(1U, 2U, 3U, 4U);
  const double height_mm = GENERATE(24.0, 80.0);
  CAPTURE(seed, height_mm);
  std::vector<Thing> things{Bin{.at = {60, 30}}, Leg{.at = {80, 30}}, Tunnel{.path = {{120, 10}, {120, 50}}},
                            Berm{{{150, 10}, {150, 50}}}};
  const auto section =
      section_drawing(view_of(rolling_ground(metre, seed), things), {180, height_mm, UnitSystem::us, {}});
  for (const LineMark& line : all<LineMark>(section.drawing)) {
    for (const DrawPoint point : line.points) {
      const SheetPoint at = on_paper(section.placement, true, point);
      CHECK(at.x >= -hair_mm);
      CHECK(at.x <= 180 + hair_mm);
      CHECK(at.y >= -hair_mm);
      CHECK(at.y <= height_mm + hair_mm);
    }
  }
  for (const TextMark& words : all<TextMark>(section.drawing)) {
    CAPTURE(words.text);
    const SheetBox box = box_of(words, section.placement);
    CHECK(box.low.x >= -1);
    CHECK(box.high.x <= 181);
    CHECK(box.low.y >= -1);
    CHECK(box.high.y <= height_mm + 1);
  }
}

TEST_CASE("No words of a crowded section lie on each other, and names that find no room are counted",
          "[sheet][section]") {
  const unsigned seed = GENERATE(1U, 2U, 3U, 4U, 5U);
  CAPTURE(seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> along{15, 205}, size{3, 12};
  std::vector<Thing> things;
  for (int i = 0; i < 14; ++i) things.push_back(Bin{.at = {along(random), 30}, .diameter_m = size(random)});
  const SectionView view = view_of(flat_ground(metre, 100), things);
  const auto section = section_drawing(view, {200, 60, UnitSystem::us, {}});
  const auto words = all<TextMark>(section.drawing);
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      CAPTURE(words[i].text, words[j].text);
      CHECK_FALSE(meet(box_of(words[i], section.placement), box_of(words[j], section.placement)));
    }
  }
  int named = section.unnamed;
  for (const TextMark& mark : words)
    for (std::size_t at = mark.text.find("bin"); at != std::string::npos; at = mark.text.find("bin", at + 1)) ++named;
  CHECK(named == 14);
}

TEST_CASE("A name steps up rather than over the pole of the next thing", "[sheet][section]") {
  const auto yard = [](std::string name, double east_m) {
    return std::pair{std::move(name), Thing{Bin{.at = {east_m, 30}, .diameter_m = 6}}};
  };
  Site site = site_with(flat_ground(metre, 100), std::vector<Thing>{});
  for (auto& [name, thing] : {yard("Leg", 110), yard("Wet bin with a long name", 135), yard("North", 165)})
    site.items.push_back({next_id(site), name, 0, {}, thing});
  const SectionView view = section_view(site, design_surface(site), eastward);
  CHECK(section_drawing(view, {160, 40, UnitSystem::metric, {}}).unnamed == 0);
}

TEST_CASE("Three things that are crossed are named above their places", "[sheet][section]") {
  const SectionView view =
      view_of(flat_ground(metre, 100), {Bin{.at = {60, 30}}, Berm{{{120, 10}, {120, 50}}}, Bin{.at = {180, 30}}});
  const auto section = section_drawing(view, {240, 80, UnitSystem::us, {}});
  CHECK(section.unnamed == 0);
  for (const auto& [name, chainage_m] : {std::pair{"bin 1", 50.0}, {"berm 2", 110.0}, {"bin 3", 170.0}}) {
    const auto words = all<TextMark>(section.drawing);
    const auto found = std::ranges::find(words, name, &TextMark::text);
    REQUIRE(found != words.end());
    CHECK(found->at.x == Approx(chainage_m));
  }
}

TEST_CASE("Water ends where its level meets the ground, between two points", "[sheet][section]") {
  const auto trough = ground_of(metre, [](SitePoint at) { return std::abs(at.x - 110.3) / 10; });
  SectionView view = view_of(trough);
  for (const SectionPoint& point : view.ground.points)
    view.water.push_back(std::abs(point.at.x - 110.3) < 10 ? std::optional{1.0} : std::nullopt);
  const auto bodies = water_bodies(view.ground, view.water);
  REQUIRE(bodies.size() == 1);
  CHECK(bodies[0].top.front().x == Approx(100.3 - 10).margin(0.01));  // closed form: 10 m from the middle
  CHECK(bodies[0].top.back().x == Approx(120.3 - 10).margin(0.01));
  CHECK(bodies[0].bed.front().y == Approx(1).margin(1e-3));
  CHECK(water_bodies(view.ground, {}).empty());
}

TEST_CASE("Over a full pit the water goes on, over an empty one it does not", "[sheet][section]") {
  SectionView view =
      view_of(flat_ground(metre, 10), {Pit{.at = {110, 30}, .body = {.width_m = 4, .length_m = 4, .depth_m = 3}}});
  for (const SectionPoint& point : view.ground.points)
    view.water.push_back(std::abs(point.at.x - 110) <= 2 ? std::nullopt : std::optional{10.2});
  CHECK(water_bodies(view.ground, over_full_pits(view, view.water)).size() == 2);
  view.pits = {{{1}, 10.0}};
  CHECK(water_bodies(view.ground, over_full_pits(view, view.water)).size() == 1);
}

TEST_CASE("A line beyond the ground is drawn as nothing", "[sheet][section]") {
  CHECK(section_drawing(view_of(flat_ground(metre, 1), {}, {{900, 0}, {990, 0}}), {}).drawing.marks.empty());
  CHECK(section_drawing(view_of(flat_ground(metre, 1), {}, {{9, 9}}), {}).drawing.marks.empty());
  CHECK(section_drawing({}, {}).drawing.marks.empty());
}

TEST_CASE("A section's page keeps a standard scale along the line", "[sheet][section]") {
  const Page page = section_page(view_of(flat_ground(metre, 100)), {"Yard", "along it", ""}, UnitSystem::metric);
  REQUIRE(page.drawings.size() == 2);
  CHECK(page.drawings[0].placement.per_unit == Approx(1000.0 / 1000));  // 200 m on at most 360 mm: 1:1000
}

namespace {

/// Level ground at 100 with two pits 3 and 4 m deep and a tunnel of 1.5 m between them on the line.
Site tunnelled_yard() {
  Site site = site_with(flat_ground(metre, 100), std::vector<Thing>{});
  const auto pit = [](SitePoint at, double depth_m) {
    Pit dug;
    dug.at = at;
    dug.body.width_m = dug.body.length_m = 2;
    dug.body.depth_m = depth_m;
    return dug;
  };
  Tunnel tunnel;
  tunnel.path = {{50, 30}, {90, 30}};
  tunnel.from = {1};
  tunnel.to = {2};
  tunnel.sill_depth_m = 2.5;
  tunnel.height_m = 1.5;
  site.items.push_back({{1}, "Upper", 0, {}, pit({50, 30}, 3)});
  site.items.push_back({{2}, "Lower", 0, {}, pit({90, 30}, 4)});
  site.items.push_back({{3}, "Walkway", 0, {}, tunnel});
  return site;
}

bool says(const Drawing& drawing, const std::string& words) {
  return std::ranges::any_of(all<TextMark>(drawing), [&](const TextMark& mark) { return mark.text == words; });
}

}  // namespace

TEST_CASE("Water in a tunnel lies between that of its pits, and stops at its crown", "[sheet][section]") {
  const Site site = tunnelled_yard();
  SectionView view = section_view(site, design_surface(site), eastward);
  view.pipes = {{{3}, {{50, 30}, {90, 30}}, 98.5, 97.5}};
  const auto tunnel = std::ranges::find(view.crossings, ItemId{3}, &LineCrossing::item);
  REQUIRE(tunnel != view.crossings.end());
  const auto water = water_below(view, *tunnel);
  REQUIRE(water.size() > 2);
  for (const WaterPoint& point : water) {
    CHECK(point.bed_m == Approx(97.5));
    CHECK(point.level_m == Approx(98.5 - (point.chainage_m - 40) / 40).margin(1e-9));  // the line begins at x = 10
  }
  view.pipes[0].start_m = 103;
  CHECK(water_below(view, *tunnel).front().level_m == Approx(99));
  view.pipes.clear();
  CHECK(water_below(view, *tunnel).empty());
}

TEST_CASE("A pit's rim and floor are told where it is asked for, and groundwater is drawn at its depth",
          "[sheet][section]") {
  Site site = tunnelled_yard();
  site.ground.groundwater_depth_m = 2;
  const SectionView view = section_view(site, design_surface(site), eastward);
  const SectionDrawing told = section_drawing(view, {240, 80, UnitSystem::metric, {}, true});
  CHECK(says(told.drawing, "rim 100.00 m"));
  CHECK(says(told.drawing, "floor 97.00 m"));
  CHECK(says(told.drawing, "floor 96.00 m"));
  CHECK_FALSE(says(section_drawing(view, {240, 80, UnitSystem::metric, {}}).drawing, "floor 97.00 m"));
  int drawn = 0;
  for (const LineMark& mark : all<LineMark>(told.drawing)) {
    if (mark.stroke.dash_mm != groundwater_stroke.dash_mm) continue;
    for (const DrawPoint point : mark.points) CHECK(point.y / told.exaggeration == Approx(98));
    ++drawn;
  }
  CHECK(drawn == 1);
  site.ground.groundwater_depth_m = 30;
  CHECK_FALSE(shows_groundwater(section_view(site, design_surface(site), eastward)));
}
