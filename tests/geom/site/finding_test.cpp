#include "geom/site/finding.hpp"

#include <catch2/catch.hpp>

#include "geom/site/finding_words.hpp"

using namespace yardwright;

namespace {

const Rule slope{"reach.slope-dry", "least slope", Quantity::angle, 37, Basis::handbook, "a handbook"};
const Rule span{"reach.free-span", "longest span", Quantity::length, 10, Basis::common_practice, ""};

}  // namespace

TEST_CASE("A margin is positive where the bound is kept, whichever way it points") {
  const Finding flat = judged(Question::reach, slope, Bound::at_least, 29.2, {{4}});
  CHECK(flat.verdict == Verdict::fail);
  CHECK(flat.margin == Approx(-7.8));
  const Finding near_enough = judged(Question::reach, span, Bound::at_most, 10, {{4}}, Verdict::caution);
  CHECK(near_enough.verdict == Verdict::pass);
  CHECK(near_enough.margin == 0);
  CHECK(judged(Question::reach, span, Bound::at_most, 11, {{4}}, Verdict::caution).verdict == Verdict::caution);
}

TEST_CASE("Findings read as sentences in the reader's units") {
  Finding flat = judged(Question::reach, slope, Bound::at_least, 29.2, {{4}});
  flat.title = "Spout to North 2 is too flat";
  flat.mends = {{"raise Leg 1", Quantity::length, 17.4 * 0.3048, 100 * 0.3048, {}}};
  CHECK(sentence(flat, UnitSystem::us) ==
        "Spout to North 2 is too flat; 29.2° of 37.0° needed; short by 7.8°; mend: raise Leg 1 by 17.4 ft to 100.0 ft");
  CHECK(mend_words(flat.mends.front(), UnitSystem::metric) == "raise Leg 1 by 5.30 m to 30.48 m");
  CHECK(basis_words(flat) == "handbook: a handbook");
}

TEST_CASE("Shares read in percent, and what is wholly missing without sums") {
  const Rule stays{"pace.stays", "most that stays", Quantity::ratio, 0.35, Basis::common_practice, ""};
  const Rule filled{"reach.filled", "least spouts", Quantity::count, 1, Basis::common_practice, ""};
  Finding share = judged(Question::pace, stays, Bound::at_most, 0.224, {{4}});
  CHECK(measured_words(share, UnitSystem::us) == "22.4%, at most 35.0%");
  CHECK(margin_words(share, UnitSystem::us) == "12.6% to spare");
  Finding none = judged(Question::reach, filled, Bound::at_least, 0, {{4}});
  none.title = "No spout fills Bin 4";
  CHECK(sentence(none, UnitSystem::us) == "No spout fills Bin 4; it needs one");
  none.required = 2;
  CHECK(measured_words(none, UnitSystem::us) == "it needs 2");
  const Finding some = judged(Question::reach, filled, Bound::at_least, 1, {{4}});
  CHECK(sentence(some, UnitSystem::us) == "; 1 of 1 needed; 0 to spare");
}

TEST_CASE("A check that did not run says what its rule asks, where that is for a person to measure") {
  const Finding far =
      not_checked(Question::reach, span, Bound::at_least, {{4}}, "places where people gather", "measure");
  CHECK(sentence(far, UnitSystem::metric) == "Places where people gather; the rule says at least 10.00 m; measure");
  CHECK(far.source == span.source);
  CHECK(sentence(not_checked(Question::reach, slope, Bound::at_least, {}, "a spout", "why"), UnitSystem::us) ==
        "A spout; why");
}

TEST_CASE("Findings are listed worst first, then by how much is missing") {
  Findings findings{judged(Question::reach, slope, Bound::at_least, 50, {{1}}),
                    judged(Question::reach, slope, Bound::at_least, 36, {{2}}),
                    not_checked(Question::reach, "reach.slope-dry", {{3}}, "a spout", "why"),
                    judged(Question::reach, slope, Bound::at_least, 20, {{4}})};
  sort_by_need(findings);
  CHECK(findings[0].id == "reach.slope-dry:4");
  CHECK(findings[1].id == "reach.slope-dry:2");
  CHECK(findings[2].verdict == Verdict::not_checked);
  CHECK(findings[3].verdict == Verdict::pass);
  CHECK(worst(findings) == Verdict::fail);
}

TEST_CASE("No finding at all is not a pass") { CHECK(worst({}) == Verdict::not_checked); }

TEST_CASE("An id names its rule and items and is the same in every run") {
  CHECK(finding_id("clear.bins", {{3}, {12}}) == "clear.bins:3-12");
  CHECK(finding_id("pace.total", {}) == "pace.total");
}
