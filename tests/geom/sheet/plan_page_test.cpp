#include "geom/sheet/plan_page.hpp"

#include <catch2/catch.hpp>

#include "geom/sheet/plan_drawing.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

constexpr double letter_long_mm = 279.4, letter_short_mm = 215.9;

double scale_on(double width_mm, double height_mm, const Site& site) {
  const Box ground = extent_of(site);
  return plan_scale(ground, plan_page_layout(width_mm, height_mm, ground, site.units).plan, site.units);
}

}  // namespace

TEST_CASE("A demo yard is drawn as large on portrait letter as on landscape") {
  for (const Site& site : {scenes::old_yard(), scenes::new_yard()}) {
    INFO(site.name);
    CHECK(scale_on(letter_short_mm, letter_long_mm, site) <= scale_on(letter_long_mm, letter_short_mm, site));
  }
}

TEST_CASE("Plan and panels fill the frame and do not overlap, beside or below") {
  const Box wide{{0, 0}, {300, 100}}, high{{0, 0}, {100, 300}};
  for (const Box& ground : {wide, high}) {
    for (const auto& [width_mm, height_mm] : {std::pair{210.0, 297.0}, {297.0, 210.0}, {594.0, 841.0}}) {
      const PlanPageLayout layout = plan_page_layout(width_mm, height_mm, ground, UnitSystem::us);
      double area_mm2 = layout.plan.width_mm() * layout.plan.height_mm();
      for (const SheetBox& panel : layout.panels) {
        area_mm2 += panel.width_mm() * panel.height_mm();
        CHECK((panel.low.x >= layout.plan.high.x - 1e-9 || panel.low.y >= layout.plan.high.y - 1e-9));
      }
      CHECK(area_mm2 == Approx(layout.frame.width_mm() * layout.frame.height_mm()));
    }
  }
  CHECK(plan_page_layout(210, 297, wide, UnitSystem::us).panels.size() == 3);
  CHECK(plan_page_layout(297, 210, high, UnitSystem::us).panels.size() == 1);
}
