#include "editor/session/question_words.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Finding finding(Verdict verdict, Quantity quantity, double margin) {
  Finding out;
  out.verdict = verdict;
  out.quantity = quantity;
  out.margin = margin;
  return out;
}

}  // namespace

TEST_CASE("A chip tells the worst margin with its unit, and never a bare number") {
  const auto us = UnitSystem::us;
  CHECK(worst_in_short({}, us) == "not asked");
  CHECK(worst_in_short({finding(Verdict::not_checked, Quantity::length, 0)}, us) == "not checked");
  CHECK(worst_in_short({finding(Verdict::fail, Quantity::length, -0.3048 * 2)}, us) == "−2.0 ft");
  CHECK(worst_in_short({finding(Verdict::pass, Quantity::length, 0.3048 * 2)}, us) == "+2.0 ft");
  CHECK(worst_in_short({finding(Verdict::fail, Quantity::count, -1), finding(Verdict::fail, Quantity::length, -1),
                        finding(Verdict::pass, Quantity::length, 1)},
                       us) == "2 to mend");
  CHECK(worst_in_short({finding(Verdict::caution, Quantity::ratio, -0.25)}, us) == "1 to look at");
  CHECK(worst_in_short({finding(Verdict::pass, Quantity::ratio, 0.25)}, us) == "passes");
}

TEST_CASE("Every question has a name and a sentence that asks it") {
  for (const Question question : every_question) {
    CHECK_FALSE(name_of(question).empty());
    CHECK(asks(question).back() == '?');
  }
}
