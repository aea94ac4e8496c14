// How many of the findings that want a mend have one, by rule, over yards that are crowded beyond use.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <map>

#include "geom/check/live_check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "tests/geom/kept.hpp"
#include "tests/scenes/crowded_yard.hpp"

using namespace yardwright;

namespace {

struct Share {
  int wanting = 0, without = 0;
};

bool wants_mend(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

std::string table_of(const std::map<std::string, Share>& shares) {
  std::string text = "rule                         wanting without\n";
  for (const auto& [rule, share] : shares)
    text += fmt::format("{:<28} {:>7} {:>7}\n", rule, share.wanting, share.without);
  return text;
}

}  // namespace

TEST_CASE("In yards crowded beyond use nearly every finding of turn and clear has a mend, and each mend passes") {
  int wanting = 0, without = 0;
  std::map<std::string, Share> shares;
  for (const unsigned seed : {101u, 102u, 103u, 104u}) {
    const Site site = scenes::crowded_yard(seed);
    const Answers answers = check(site, shipped_catalogs());
    for (const Question question : {Question::turn, Question::clear}) {
      for (const Finding& finding : findings_of(answers, question)) {
        if (!wants_mend(finding)) continue;
        INFO("seed " << seed << ": " << sentence(finding, UnitSystem::metric));
        ++wanting;
        ++shares[finding.rule].wanting;
        if (finding.mends.empty()) {
          ++without;
          ++shares[finding.rule].without;
          CHECK_FALSE(finding.note.empty());
          continue;
        }
        LiveCheck mended{shipped_catalogs()};
        mended.ask(apply(site, finding.mends.front().edits));
        CHECK(is_kept(findings_of(mended.answers(), question), finding));
      }
    }
  }
  INFO(table_of(shares));
  CHECK(wanting > 40);
  CHECK(without <= wanting / 20);
}
