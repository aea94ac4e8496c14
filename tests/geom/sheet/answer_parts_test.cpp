#include "geom/sheet/answer_parts.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/units/text.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

std::vector<std::string> words_of(const PlanParts& parts) {
  std::vector<std::string> words;
  for (const Label& label : parts.labels) {
    for (const LabelLine& line : label.lines) words.push_back(line.text);
  }
  return words;
}

bool says(const PlanParts& parts, const std::string& text) {
  const auto words = words_of(parts);
  return std::ranges::any_of(words, [&](const std::string& line) { return line.find(text) != std::string::npos; });
}

}  // namespace

TEST_CASE("Reach's plan says the slope of every spout") {
  const Answers answers = check(scenes::old_yard(), shipped_catalogs());
  REQUIRE_FALSE(answers.reach->spouts.empty());
  const PlanParts parts = reach_parts(*answers.reach, {});
  for (const reach::CheckedSpout& spout : answers.reach->spouts) {
    CHECK(says(parts, text_of(spout.line.slope().as_degrees(), Quantity::angle, UnitSystem::us)));
  }
}

TEST_CASE("Clear's plan draws each break with what is measured and what is needed") {
  const Answers answers = check(scenes::old_yard(), shipped_catalogs());
  const PlanParts parts = clear_parts(*answers.clear, {});
  const auto apart = [](const clear::NearPlace& near) { return near.pair.a != near.pair.b; };
  CHECK(static_cast<std::ptrdiff_t>(parts.obstacles.size()) == std::ranges::count_if(answers.clear->near, apart));
  CHECK(says(parts, "9.1 ft < 10 ft"));
}

TEST_CASE("Drain's plan draws the ground as it lies and as it will lie, and names the pits' water") {
  const Site site = scenes::new_yard();
  const Answers answers = check(site, shipped_catalogs());
  PlanStyle style;
  style.units = site.units;
  const PlanParts parts = drain_parts(*answers.drain, answers.surface, site, style);
  int dashed = 0, solid = 0;
  for (const Mark& mark : parts.shapes) {
    const LineMark* line = std::get_if<LineMark>(&mark);
    if (line == nullptr) continue;
    (line->stroke.dash_mm.empty() ? solid : dashed) += 1;
  }
  CHECK(dashed > 0);
  CHECK(solid > 0);
  CHECK(says(parts, "gets the rain of"));
}

TEST_CASE("A question that is not asked yet draws nothing") {
  CHECK(answer_parts(Question::grow, {}, {}, {}).shapes.empty());
}
