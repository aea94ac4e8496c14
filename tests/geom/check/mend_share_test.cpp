// How many of the findings that want a mend have one, by rule, over yards that are crowded beyond use.
#include <fmt/format.h>
#include <catch2/catch.hpp>
#include <map>

#include "geom/check/check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "tests/geom/kept.hpp"
#include "tests/scenes/crowded_yard.hpp"

using namespace yardwright;

namespace {

constexpr unsigned first_seed = 1, yards = 12;

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

TEST_CASE("Print the share of findings without a mend by rule", "[.share]") {
  std::map<std::string, Share> shares;
  for (unsigned seed = first_seed; seed < first_seed + yards; ++seed) {
    for (const Finding& finding : all_findings(check(scenes::crowded_yard(seed), shipped_catalogs()))) {
      if (!wants_mend(finding)) continue;
      ++shares[finding.rule].wanting;
      if (!finding.mends.empty()) continue;
      ++shares[finding.rule].without;
      UNSCOPED_INFO("seed " << seed << ": " << sentence(finding, UnitSystem::metric));
    }
  }
  UNSCOPED_INFO(table_of(shares));
  FAIL("see above");
}
