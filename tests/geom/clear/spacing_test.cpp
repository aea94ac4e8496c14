#include "geom/clear/spacing.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/clear/asked_yard.hpp"

using namespace yardwright;
using namespace yardwright::clear;

TEST_CASE("Bins are measured wall to wall, exactly") {
  const Answer answer = asked(yard_with({bin_at(0, 0), bin_at(30, 40)}));  // 50 ft between centres, 14 ft of walls
  REQUIRE(finding(answer, "clear.bin-bin") != nullptr);
  CHECK(finding(answer, "clear.bin-bin")->measured == Approx(14 * ft).epsilon(1e-12));
  CHECK(verdict(asked(yard_with({bin_at(0, 0), bin_at(42, 0)})), "clear.bin-bin") == "pass");
  CHECK(verdict(asked(yard_with({bin_at(0, 0), bin_at(41.9, 0)})), "clear.bin-bin:1-2") == "caution");
}

TEST_CASE("What overlaps fails by how deep it does") {
  const Answer bins = asked(yard_with({bin_at(0, 0), bin_at(30, 0)}));
  REQUIRE(finding(bins, "clear.overlap:1-2") != nullptr);
  CHECK(finding(bins, "clear.overlap:1-2")->measured == Approx(-6 * ft));
  const Answer mixed = asked(yard_with({bin_at(0, 0), building_at(15, 0)}));
  REQUIRE(finding(mixed, "clear.overlap:1-2") != nullptr);
  CHECK(finding(mixed, "clear.overlap:1-2")->measured == Approx(-3 * ft));
  CHECK(verdict(asked(yard_with({bin_at(0, 0), bin_at(36, 0)})), "clear.overlap") == "pass");
}

TEST_CASE("Bins in one place have a way out all the same") {
  check_mends(yard_with({bin_at(0, 0), bin_at(0, 0)}), "clear.overlap:1-2", 2);
}

TEST_CASE("What is built into or over another does not overlap it") {
  const Answer answer = asked(yard_with({Dryer{}, OverheadHolding{}, Receiving{.at = {100, 0}}, Leg{.at = {100, 0}}}));
  CHECK(finding(answer, "clear.overlap:1-2") == nullptr);
  CHECK(finding(answer, "clear.overlap:3-4") == nullptr);
}

// Case 30: 29 CFR 1910.110 (read); the lone tank's condition of 25 ft from any other is from memory.
TEST_CASE("A lone tank up to 1,200 gal may stand 10 ft from a building, one of two may not") {
  const auto with_gap = [](double gap_ft, double gallons) {
    return yard_with({tank_at(0, 0, gallons), building_at(gap_ft, 0)});
  };
  CHECK(verdict(asked(with_gap(10, 1000)), "clear.lp-single") == "pass");
  CHECK(verdict(asked(with_gap(9.9, 1000)), "clear.lp-single:1-2") == "fail");
  CHECK(verdict(asked(with_gap(24.9, 2000)), "clear.lp-to-2000:1-2") == "fail");
  CHECK(verdict(asked(with_gap(25, 2000)), "clear.lp-to-2000") == "pass");
  CHECK(verdict(asked(with_gap(49.9, 2001)), "clear.lp-to-30000:1-2") == "fail");
  Site two = with_gap(10, 1000);
  two.items.push_back({{3}, "", 0, {}, tank_at(0, 14, 1000)});
  CHECK(verdict(asked(two), "clear.lp-to-2000:1-2") == "fail");
}

// Case 31: per container by an OSHA letter of 1975 (read); added up by a farm insurer's sheet (read).
TEST_CASE("Tanks count one by one, with a caution where their sum would ask for more") {
  const auto two = [](double gallons, double gap_ft) {
    return yard_with({tank_at(0, 0, gallons), tank_at(0, 14, gallons), building_at(gap_ft, 0)});
  };
  const Answer thousands = asked(two(1000, 25));
  CHECK(verdict(thousands, "clear.lp-to-2000") == "pass");
  CHECK(finding(thousands, "clear.lp-to-30000:1-3") == nullptr);
  const Answer larger = asked(two(1500, 25));
  CHECK(verdict(larger, "clear.lp-to-2000") == "pass");
  CHECK(verdict(larger, "clear.lp-to-30000:1-3") == "caution");
}

// Case 32: the OSHA letter's own example (read).
TEST_CASE("Two 500 gal tanks 3 ft apart and 10 ft from a building comply") {
  const Answer answer = asked(yard_with({tank_at(0, 0, 500), tank_at(0, 13, 500), building_at(10, 0)}));
  CHECK(verdict(answer, "clear.lp-to-500") == "pass");
  CHECK(verdict(answer, "clear.lp-between-to-2000") == "pass");
  CHECK(verdict(asked(yard_with({tank_at(0, 0, 500), tank_at(0, 12.9, 500)})), "clear.lp-between-to-2000:1-2") ==
        "fail");
}

TEST_CASE("Small tanks that stand together count as one") {
  // Two of 100 gal are 200 gal together: 10 ft. By the OSHA letter (read), only those under 125 gal are added.
  const Answer answer = asked(yard_with({tank_at(0, 0, 100), tank_at(0, 13, 100), building_at(5, 0)}));
  CHECK(verdict(answer, "clear.lp-to-500:1-3") == "fail");
  CHECK(verdict(asked(yard_with({tank_at(0, 0, 100), building_at(5, 0)})), "clear.lp-under-125") == "pass");
}

// Case 37: WAC 296-826 and two more states (read).
TEST_CASE("Ammonia keeps its distance from wells, and says what it cannot know") {
  const auto answer = asked(yard_with({tank_at(0, 0, 1500, TankContents::ammonia), Well{.at = {60.5 * ft, 0}}}));
  CHECK(verdict(answer, "clear.well-ammonia") == "pass");
  CHECK(verdict(answer, "clear.ammonia-assembly:1") == "not-checked");
  CHECK(verdict(asked(yard_with({tank_at(0, 0, 1500, TankContents::ammonia), Well{.at = {50 * ft, 0}}})),
                "clear.well-ammonia:1-2") == "fail");
}

TEST_CASE("A dryer stands 10 ft off buildings") {  // a farm insurer's bulletin (read)
  const auto with_gap = [](double gap_ft) {
    return yard_with({Dryer{.at = {-5 * ft, 0}, .length_m = 30 * ft, .width_m = 10 * ft}, building_at(gap_ft, 0)});
  };
  CHECK(verdict(asked(with_gap(10)), "clear.dryer-building") == "pass");
  CHECK(verdict(asked(with_gap(9)), "clear.dryer-building:1-2") == "fail");
  check_mends(with_gap(9), "clear.dryer-building:1-2", 2);
}

TEST_CASE("A move that mends is as long as what is short, and no longer") {
  const Site site = yard_with({bin_at(0, 0), bin_at(38, 0)});
  const Answer answer = asked(site);
  const Finding* found = finding(answer, "clear.bin-bin:1-2");
  REQUIRE(found != nullptr);
  REQUIRE(found->mends.size() == 2);
  CHECK(found->mends.front().change == Approx(4 * ft).margin(1e-5));
  check_mends(site, "clear.bin-bin:1-2", 2);
}

TEST_CASE("A dwelling and a well are never what moves") {
  const Answer answer =
      asked(yard_with({bin_at(0, 0), building_at(60, 0, BuildingUse::dwelling), Well{.at = {0, 25 * ft}}}));
  for (const char* id : {"clear.dwelling-bin:1-2", "clear.well-building:1-3"}) {
    REQUIRE(finding(answer, id) != nullptr);
    for (const Mend& mend : finding(answer, id)->mends)
      CHECK(std::get<PutItem>(mend.edits.front()).item.id == ItemId{1});
  }
}
