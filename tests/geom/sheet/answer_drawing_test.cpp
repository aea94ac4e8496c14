#include "geom/sheet/answer_drawing.hpp"

#include <catch2/catch.hpp>

#include "geom/check/check.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

/// A shore lies at its water's level; between cell centres a float's last digit.
constexpr double level_m = 1e-3;

}  // namespace

TEST_CASE("The old yard's swept way and standing water are drawn, an empty yard's are not") {
  const Answers answers = check(scenes::old_yard(), shipped_catalogs());
  CHECK_FALSE(turn_drawing(*answers.turn).marks.empty());
  const Drawing water = drain_drawing(*answers.drain);
  CHECK(std::ranges::any_of(water.marks, [](const Mark& mark) { return std::holds_alternative<AreaMark>(mark); }));
  CHECK(turn_drawing({}).marks.empty());
  CHECK(drain_drawing({}).marks.empty());
}

TEST_CASE("Water is drawn where it stands: inside the rings of its pond") {
  const Answers answers = check(scenes::old_yard(), shipped_catalogs());
  REQUIRE_FALSE(answers.drain->ponds.empty());
  double highest_spill_m = -1e9;
  for (const drain::Pond& pond : answers.drain->ponds)
    highest_spill_m = std::max(highest_spill_m, pond.hollow.spill_level_m);
  for (const Mark& mark : drain_drawing(*answers.drain).marks) {
    const AreaMark* area = std::get_if<AreaMark>(&mark);
    if (area == nullptr) continue;
    for (const DrawPoint& point : area->rings.front()) {
      CHECK(answers.surface.level_m({point.x, point.y}) < highest_spill_m + level_m);
    }
  }
}
