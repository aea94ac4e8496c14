#include "geom/sheet/slope_arrows.hpp"

#include <catch2/catch.hpp>
#include <numbers>

using namespace yardwright;

namespace {

constexpr double scale_m_per_mm = 0.5;

template <class LevelAt>
Site yard(LevelAt level_at_place) {
  Site site;
  site.lot = rectangular_lot(200, 150);
  const GridFrame frame{{-50, -50}, 1, 300, 250};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(level_at_place(frame.centre(frame.cell_at_offset(i)))));
  site.ground.levels = {frame, std::move(levels)};
  return site;
}

Site tilted(double grade, Bearing way) {
  return yard([=](SitePoint at) { return 100 - grade * dot(at - SitePoint{}, direction(way)); });
}

std::vector<SlopeArrow> arrows_of(const Site& site, const std::vector<Obstacle>& keep_off = {},
                                  double metres_per_mm = scale_m_per_mm) {
  return slope_arrows(site, design_surface(site), keep_off, metres_per_mm);
}

double between_deg(SiteVector a, SiteVector b) {
  return std::acos(std::clamp(dot(a, b), -1.0, 1.0)) * 180 / std::numbers::pi;
}

}  // namespace

TEST_CASE("Every arrow on a plane points the way that it falls and says its grade") {
  const double bearing_deg = GENERATE(0.0, 37.0, 135.0, 251.0);
  const Site site = tilted(0.023, Bearing::degrees(bearing_deg));
  const auto arrows = arrows_of(site);
  CHECK(arrows.size() >= 30);
  for (const SlopeArrow& arrow : arrows) {
    CHECK(between_deg(arrow.downhill, direction(Bearing::degrees(bearing_deg))) < 0.05);
    CHECK(arrow.grade_ratio == Approx(0.023).margin(1e-5));
    CHECK(slope_words(arrow.grade_ratio) == "2.3%");
    CHECK(contains(Polygon{site.lot.corners, {}}, arrow.at));
  }
}

TEST_CASE("Arrows keep their distance on the paper at every scale, so a quarter as many at half the scale") {
  const Site site = tilted(0.02, Bearing::degrees(160));
  for (const double metres_per_mm : {0.25, 0.5, 1.0}) {
    const auto arrows = arrows_of(site, {}, metres_per_mm);
    for (std::size_t i = 0; i < arrows.size(); ++i)
      for (std::size_t j = 0; j < i; ++j) CHECK(distance(arrows[i].at, arrows[j].at) / metres_per_mm > 20);
  }
  const auto near = static_cast<double>(arrows_of(site, {}, 0.25).size()),
             far = static_cast<double>(arrows_of(site, {}, 0.5).size());
  CHECK(near / far > 3);
  CHECK(near / far < 5);
}

TEST_CASE("No arrow lies on what is to be kept free, nor within it") {
  const Site site = tilted(0.02, Bearing::degrees(160));
  const SitePath square{{60, 40}, {140, 40}, {140, 110}, {60, 110}};
  const auto arrows = arrows_of(site, {{Disc{{30, 30}, 15}, 5, true, 0, {}}, {square, 5, true, 0, {}}});
  CHECK_FALSE(arrows.empty());
  for (const SlopeArrow& arrow : arrows) {
    CHECK(distance(arrow.at, {30, 30}) > 15);
    CHECK_FALSE(contains(Polygon{square, {}}, arrow.at));
  }
}

TEST_CASE("Level ground, ground that is not known and the crest of a roof carry no arrow") {
  CHECK(arrows_of(tilted(0.001, Bearing::degrees(0))).empty());
  CHECK(slope_arrows({}, {}, {}, 0.5).empty());
  const Site ridge = yard([](SitePoint at) { return 100 - 0.1 * std::abs(at.x - 100); });
  const auto arrows = arrows_of(ridge);
  CHECK_FALSE(arrows.empty());
  for (const SlopeArrow& arrow : arrows) {
    CHECK(std::abs(arrow.at.x - 100) > 1);
    CHECK(arrow.downhill.x * (arrow.at.x - 100) > 0);
    CHECK(arrow.grade_ratio == Approx(0.1).margin(0.02));
  }
}

TEST_CASE("A graded drive's arrows run along it with its own grade, beside its middle") {
  Site site = tilted(0.05, Bearing::degrees(180));
  Drive drive{{{100, 10}, {100, 140}}, 8};
  drive.greatest_grade_ratio = 0.08;
  drive.crown_ratio = 0.03;
  site.items.push_back({{1}, "", 0, {}, drive});
  int on_drive = 0;
  for (const SlopeArrow& arrow : arrows_of(site)) {
    if (std::abs(arrow.at.x - 100) > 3 || arrow.at.y < 10 || arrow.at.y > 140) continue;
    CHECK(between_deg(arrow.downhill, {0, -1}) < 0.1);
    CHECK(arrow.grade_ratio == Approx(0.05).margin(1e-3));
    CHECK(std::abs(arrow.at.x - 100) > 0.5);
    ++on_drive;
  }
  CHECK(on_drive >= 3);
}

TEST_CASE("On the paper an arrow's tip lies downhill of its tail, and words keep off it") {
  const PlanParts parts = slope_arrow_parts({{{10, 20}, {0, -1}, 0.127}}, scale_m_per_mm);
  const auto* symbol = std::get_if<SymbolMark>(&parts.shapes.at(0));
  REQUIRE(symbol != nullptr);
  const auto& shaft = std::get<LineMark>(symbol->marks.at(0));
  const DrawPoint tip = std::get<AreaMark>(symbol->marks.at(1)).rings.at(0).at(0);
  CHECK(tip.y > shaft.points.front().y + 7);
  CHECK(tip.x == Approx(shaft.points.front().x));
  CHECK(std::get<TextMark>(parts.shapes.at(1)).text == "13%");
  REQUIRE(parts.obstacles.size() == 1);
  CHECK(contains(Polygon{std::get<SitePath>(parts.obstacles[0].shape), {}}, {10, 20}));
}
