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

TEST_CASE("What was checked in part is told apart from what was not, and never as a pass") {
  const Finding open = finding(Verdict::not_checked, Quantity::length, 0);
  const Finding good = finding(Verdict::pass, Quantity::length, 1);
  CHECK(worst_in_short({open, good}, UnitSystem::us) == "some pass");
  CHECK(worst_in_short({open, open}, UnitSystem::us) == "not checked");
  CHECK(counts_in_words({open, good, good}) == "2 pass, 1 not checked");
  CHECK(counts_in_words({finding(Verdict::fail, Quantity::length, -1), finding(Verdict::caution, Quantity::length, -1),
                         open}) == "1 to mend, 1 to look at, 1 not checked");
  CHECK(counts_in_words({}).empty());
}

TEST_CASE("Every question has a name and a sentence that asks it") {
  for (const Question question : every_question) {
    CHECK_FALSE(name_of(question).empty());
    CHECK(asks(question).back() == '?');
  }
}
