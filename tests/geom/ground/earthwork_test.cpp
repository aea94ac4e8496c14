#include "geom/ground/earthwork.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr double ft = 0.3048;
constexpr double ft2 = ft * ft;
constexpr double ft3 = ft * ft * ft;
constexpr double cubic_yard = 27 * ft3;

}  // namespace

TEST_CASE("The fill of a 100 by 60 ft pad, 3 ft over flat ground at 3:1, is the prismoid's 838.7 cubic yards") {
  // Prismoid: 3/6 (100*60 + 4*109*69 + 118*78) = 22,644 ft3 (computed).
  const GridFrame half_foot{{0, 0}, 0.5 * ft, 260, 180};
  const Pad pad{{{15 * ft, 15 * ft}, {115 * ft, 15 * ft}, {115 * ft, 75 * ft}, {15 * ft, 75 * ft}}, 103 * ft, 3};
  const DesignSurface surface = design_surface(site_with<Thing>(flat_ground(half_foot, 100 * ft), {pad}));
  const Earthwork work = earthwork(surface);
  constexpr double grid_tolerance_cy = 0.5;
  CHECK(work.fill_m3 / cubic_yard == Approx(838.7).margin(grid_tolerance_cy));
  CHECK(work.cut_m3 == 0);
  CHECK(work.left_over_m3() == -work.fill_m3);
  CHECK(work.fill_area_m2 / ft2 == Approx(118 * 78).epsilon(0.01));
}

TEST_CASE("Average end areas of contours give the published volume of a pond") {
  // FHWA HEC-22, example 10.6: 61,985 ft3 (read); conic 61,548 ft3 (computed).
  const std::vector<double> areas_ft2{0, 490, 1740, 4290, 6880, 10320, 12830, 15500, 19870};
  std::vector<double> areas_m2;
  double conic_m3 = 0;
  for (const double area : areas_ft2) {
    areas_m2.push_back(area * ft2);
    if (areas_m2.size() > 1) conic_m3 += conic_volume_m3(areas_m2[areas_m2.size() - 2], areas_m2.back(), ft);
  }
  CHECK(average_end_area_volume_m3(areas_m2, ft) / ft3 == Approx(61985).margin(0.5));
  CHECK(conic_m3 / ft3 == Approx(61548).epsilon(0.001));
}

TEST_CASE("Average end areas of a railroad cut give the old handbook's volume") {
  // 19th-century railroad handbook, article 108: base 20 ft, 1.5:1, cuts 0 5 10 15 0 at 50 ft; printed 56,200 from
  // areas in whole feet (read), 56,250 from exact ones (computed).
  std::vector<double> areas_m2;
  for (const double cut_ft : {0, 5, 10, 15, 0}) areas_m2.push_back(cut_ft * (20 + 1.5 * cut_ft) * ft2);
  CHECK(average_end_area_volume_m3(areas_m2, 50 * ft) / ft3 == Approx(56250));
}

TEST_CASE("Cut and fill add up to the difference of the two surfaces, on random ground") {
  const GridFrame frame{{0, 0}, 1, 120, 90};
  for (const unsigned seed : {31u, 32u, 33u}) {
    INFO("seed " << seed);
    const LevelGrid ground = rough_ground(frame, seed, 2);
    const Pad pad{{{30, 20}, {80, 25}, {70, 60}, {25, 50}}, 1, 3};
    const DesignSurface surface = design_surface(site_with<Thing>(ground, {pad}));
    double sum_m3 = 0;
    for (std::size_t i = 0; i < frame.cells(); ++i)
      sum_m3 += double(ground.values()[i]) - double(surface.design.values()[i]);
    const Earthwork work = earthwork(surface);
    CHECK(work.cut_m3 > 0);
    CHECK(work.fill_m3 > 0);
    CHECK(work.left_over_m3() == Approx(sum_m3).margin(1e-6));
    const Earthwork back = earthwork(surface.design, surface.existing);
    CHECK(back.cut_m3 == work.fill_m3);
    CHECK(back.fill_m3 == work.cut_m3);
  }
}

TEST_CASE("Earth of a drive over a ridge or through a hollow, graded from 12 to 8 percent, is that of its sections") {
  // Geometry: level across, the middle h off the ground: a section is h (w + 3 h). h grows by 4 % over 50 m to 2 m and back:
  // 2 * 50 m * (4.2 * 2 / 2 + 3 * 4 / 3) = 820 m3, all cut or all filled.
  const GridFrame quarter{{-10, -20}, 0.25, 480, 160};
  const Drive drive{.path = {{0, 0}, {100, 0}}, .width_m = 4.2, .greatest_grade_ratio = 0.08};
  for (const double up : {0.12, -0.12}) {
    const LevelGrid ground =
        ground_of(quarter, [up](SitePoint at) { return 100 + up * std::max(0.0, 50 - std::abs(at.x - 50)); });
    const Earthwork work = earthwork(design_surface(site_with<Thing>(ground, {drive})));
    CHECK(work.cut_m3 == Approx(up > 0 ? 820 : 0).epsilon(0.01).margin(1));
    CHECK(work.fill_m3 == Approx(up > 0 ? 0 : 820).epsilon(0.01).margin(1));
  }
}

TEST_CASE("A drive benched into a side hill moves the two triangles of the old handbooks") {
  // Geometry: half width b, hill m: each side ends at d = m b / (1/s - m) beyond the edge, a triangle of m b (b + d) / 2.
  const GridFrame quarter{{0, -20}, 0.25, 400, 160};
  const LevelGrid ground = ground_of(quarter, [](SitePoint at) { return 100 + 0.1 * at.y; });
  const Drive drive{.path = {{-50, 0}, {150, 0}}, .width_m = 6, .greatest_grade_ratio = 0.08};
  const Earthwork work = earthwork(design_surface(site_with<Thing>(ground, {drive})));
  const double beyond_m = 0.1 * 3 / (1 / 3.0 - 0.1), section_m2 = 0.1 * 3 * (3 + beyond_m) / 2;
  CHECK(work.cut_m3 == Approx(100 * section_m2).epsilon(0.01));
  CHECK(work.fill_m3 == Approx(100 * section_m2).epsilon(0.01));
}

TEST_CASE("No ground needs no earthwork") { CHECK(earthwork(DesignSurface{}) == Earthwork{}); }
