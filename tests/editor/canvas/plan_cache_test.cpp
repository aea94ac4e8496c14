#include "editor/canvas/plan_cache.hpp"

#include <catch2/catch.hpp>

#include "editor/canvas/answer_cache.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/edit.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::canvas;

namespace {

PlanStyle style_at(double metres_per_mm) {
  PlanStyle style;
  style.metres_per_mm = metres_per_mm;
  return style;
}

const Item& of_kind(const Site& site, std::string_view kind) {
  for (const Item& item : site.items) {
    if (kind_key(item.thing) == kind) return item;
  }
  throw std::logic_error("the yard lacks one");
}

Site with_moved(const Site& site, std::string_view kind) {
  Item item = of_kind(site, kind);
  item.thing = moved(item.thing, {3, 0});
  return apply(site, PutItem{item});
}

}  // namespace

TEST_CASE("The ground is shaped once for every scale, and again only when something grades it") {
  const Site site = scenes::old_yard();
  PlanCache plan;
  const std::size_t marks = plan.drawing(site, 1, style_at(0.5)).marks.size();
  CHECK(marks > 10);
  for (const double scale : {0.4, 0.6, 1.0}) std::ignore = plan.drawing(site, 1, style_at(scale));
  CHECK(plan.times_shaped() == 1);
  std::ignore = plan.drawing(with_moved(site, "bin"), 2, style_at(0.5));
  CHECK(plan.times_shaped() == 1);
  Site graded = site;
  graded.items.push_back({next_id(site), "Berm", 0, {}, Berm{.path = {{20, 20}, {60, 20}}}});
  std::ignore = plan.drawing(graded, 3, style_at(0.5));
  CHECK(plan.times_shaped() == 2);
}

TEST_CASE("A plan with a kept ground is the plan without one") {
  const Site site = scenes::old_yard();
  const DesignSurface surface = design_surface(site);
  PlanStyle kept = style_at(0.5);
  kept.ground = std::make_shared<const GroundShape>(ground_shape(surface, site.units));
  PlanStyle made = style_at(0.5);
  made.units = kept.units = site.units;
  const Drawing a = plan_drawing(site, surface, kept), b = plan_drawing(site, surface, made);
  REQUIRE(a.marks.size() == b.marks.size());
  for (std::size_t i = 0; i < a.marks.size(); ++i) CHECK(a.marks[i].index() == b.marks[i].index());
}

TEST_CASE("A picture that comes in later is drawn though the yard is the same") {
  Site site;
  site.lot = rectangular_lot(100, 80);
  site.items.push_back({{1}, "sky", 0, {}, Picture{.at = {50, 40}, .width_m = 60}});
  PlanCache plan;
  const auto pictures = [](const Drawing& drawing) {
    return std::ranges::count_if(drawing.marks,
                                 [](const Mark& mark) { return std::holds_alternative<PictureMark>(mark); });
  };
  CHECK(pictures(plan.drawing(site, 1, style_at(0.5))) == 0);
  PlanStyle style = style_at(0.5);
  style.pictures.push_back({{1}, Pixels{1, 1, {0xFF0000FFU}}});
  CHECK(pictures(plan.drawing(site, 1, style)) == 1);
}

TEST_CASE("An answer's drawing is made once, and again for another answer") {
  const Site site = scenes::old_yard();
  const Answers answers = check(site, shipped_catalogs());
  const Drawing nothing;
  const PlanBelow plan{site, nothing, 1, 0.5};
  AnswerCache kept;
  const auto* first = &kept.drain(answers, plan);
  CHECK(first->marks.size() > 3);
  for (int frame = 0; frame < 5; ++frame) {
    std::ignore = kept.drain(answers, plan);
    std::ignore = kept.turn(answers);
  }
  CHECK(kept.times_made() == 2);
  Answers other = answers;
  other.drain = std::make_shared<drain::Answer>();
  other.surface = {};
  CHECK(kept.drain(other, plan).marks.empty());
  CHECK(kept.times_made() == 3);
}
