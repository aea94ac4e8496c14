#include "geom/sheet/symbol.hpp"

#include <catch2/catch.hpp>

#include "geom/site/item.hpp"

using namespace yardwright;

namespace {

double reach_of(const LineMark& mark) {
  double reach = 0;
  for (const DrawPoint point : mark.points) reach = std::max({reach, std::abs(point.x), std::abs(point.y)});
  return reach;
}
double reach_of(const AreaMark& mark) {
  double reach = 0;
  for (const auto& corners : mark.rings) reach = std::max(reach, reach_of(LineMark{corners, {}, true}));
  return reach;
}
double reach_of(const CircleMark& mark) {
  return std::max(std::abs(mark.centre.x), std::abs(mark.centre.y)) + mark.radius;
}

double reach_of(const SymbolMarks& marks) {
  double reach = 0;
  for (const auto& mark : marks)
    reach = std::max(reach, std::visit([](const auto& simple) { return reach_of(simple); }, mark));
  return reach;
}

}  // namespace

TEST_CASE("Every kind has its own icon, within its box") {
  for (const Thing& thing : every_kind()) {
    INFO(kind_key(thing));
    const SymbolMarks marks = symbol_of_kind(kind_key(thing));
    CHECK_FALSE(marks.empty());
    CHECK(reach_of(marks) <= kind_symbol_half_mm);
    CHECK(reach_of(marks) > kind_symbol_half_mm / 2);
  }
  CHECK(symbol_of_kind("no such kind").empty());
}

TEST_CASE("Verdicts differ by shape, not only by colour") {
  CHECK(symbol_of(Verdict::fail).size() == 2);
  CHECK(std::holds_alternative<AreaMark>(symbol_of(Verdict::caution).front()));
  CHECK(symbol_of(Verdict::pass).size() == 1);
  CHECK(std::holds_alternative<CircleMark>(symbol_of(Verdict::not_checked).front()));
  for (const Verdict verdict : {Verdict::fail, Verdict::caution, Verdict::pass, Verdict::not_checked}) {
    CHECK(reach_of(symbol_of(verdict)) <= verdict_symbol_half_mm);
  }
}

TEST_CASE("A scaled and shifted icon covers the scaled and shifted box") {
  const SymbolMarks marks = symbol_of_kind(Bin::key);
  CHECK(reach_of(scaled(marks, 2)) == Approx(2 * reach_of(marks)));
  CHECK(reach_of(shifted(marks, {10, 0})) == Approx(10 + reach_of(marks)));
}
