#include "geom/sheet/plan_drawing.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

/// One thing of a kind with its lines drawn out, since a line without corners shows nothing.
Thing drawn_out(Thing thing) {
  std::visit(
      [](auto& kind) {
        if constexpr (requires { kind.path; }) kind.path = {{0, 0}, {30, 0}, {40, 20}};
        if constexpr (requires { kind.outline; }) kind.outline = {{0, 0}, {30, 0}, {30, 20}, {0, 20}};
      },
      thing);
  return thing;
}

Site site_with(const Thing& thing) {
  Site site;
  Bin bin;
  bin.at = {20, 0};
  site.items = {{{1}, "Leg", 0, {}, Leg{}}, {{2}, "North 1", 0, {}, bin}, {{3}, "", 0, {}, drawn_out(thing)}};
  if (Spout* spout = std::get_if<Spout>(&site.items.back().thing)) *spout = {.from = {1}, .to = {2}};
  return site;
}

Site without_last(Site site) {
  site.items.pop_back();
  return site;
}

}  // namespace

TEST_CASE("Every kind shows on the plan") {
  for (const Thing& thing : every_kind()) {
    const Site site = site_with(thing);
    const Site bare = without_last(site);
    INFO(kind_key(thing));
    CHECK(plan_drawing(site, {}).marks.size() > plan_drawing(bare, {}).marks.size());
  }
}

TEST_CASE("A kind with its default fields and no corners is drawn without fault") {
  for (const Thing& thing : every_kind()) {
    Site site;
    site.items = {{{1}, "", 0, {}, thing}};
    INFO(kind_key(thing));
    CHECK_NOTHROW(plan_drawing(site, {}));
  }
}

TEST_CASE("A bin's wall is drawn at its place and its radius in site metres") {
  Bin bin;
  bin.at = {12, 34};
  bin.diameter_m = 10;
  Site site;
  site.items = {{{1}, "North 1", 0, {}, bin}};
  bool found = false;
  for (const Mark& mark : plan_drawing(site, {}).marks) {
    const CircleMark* circle = std::get_if<CircleMark>(&mark);
    found = found || (circle != nullptr && circle->centre == DrawPoint{12, 34} && circle->radius == 5);
  }
  CHECK(found);
}

TEST_CASE("What a later phase builds is drawn paler") {
  Site site;
  site.items = {{{1}, "North 1", 2, {}, Bin{}}};
  const auto strongest = [&](int built) {
    PlanStyle style;
    style.built_phase = built;
    int alpha = 0;
    for (const Mark& mark : plan_drawing(site, {}, style).marks) {
      if (const CircleMark* circle = std::get_if<CircleMark>(&mark))
        alpha = std::max<int>(alpha, circle->stroke.colour.alpha);
    }
    return alpha;
  };
  CHECK(strongest(1) < strongest(2));
}

TEST_CASE("The extent of an empty yard is a place to draw in") {
  const Box box = extent_of(Site{});
  CHECK(box.high.x > box.low.x);
  CHECK(box.high.y > box.low.y);
}
