#include "geom/sheet/overlay.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

Finding finding_at(SitePoint at, Verdict verdict) {
  Finding finding;
  finding.verdict = verdict;
  finding.title = "Spout to North 2 is too flat";
  finding.margin = verdict == Verdict::pass ? 1 : -1;
  finding.place = {at};
  finding.mends = {{"raise Leg 1", Quantity::length, 3.048, 30.48, {}}};
  return finding;
}

std::vector<std::string> words_of(const Drawing& drawing) {
  std::vector<std::string> words;
  for (const Mark& mark : drawing.marks) {
    if (const TextMark* text = std::get_if<TextMark>(&mark)) words.push_back(text->text);
  }
  return words;
}

}  // namespace

TEST_CASE("A failing finding says on the plan how much is short and what would mend it") {
  const auto words = words_of(finding_overlay({finding_at({0, 0}, Verdict::fail)}));
  REQUIRE(words.size() == 2);
  CHECK(words[0] == "short by 3.3 ft");
  CHECK(words[1] == "raise Leg 1 by 10.0 ft to 100.0 ft");
}

TEST_CASE("What passes and what has no place stays off the plan") {
  Finding nowhere = finding_at({0, 0}, Verdict::fail);
  nowhere.place.clear();
  CHECK(finding_overlay({finding_at({0, 0}, Verdict::pass), nowhere}).marks.empty());
}

TEST_CASE("Findings at one place share one sign, with the numbers of all") {
  OverlayStyle style;
  style.words = OverlayWords::numbers;
  const Findings findings{finding_at({0, 0}, Verdict::caution), finding_at({0.1, 0}, Verdict::fail),
                          finding_at({90, 0}, Verdict::fail)};
  CHECK(words_of(finding_overlay(findings, style)) == std::vector<std::string>{"2, 1", "3"});
}
