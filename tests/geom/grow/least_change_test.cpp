// Least changes over crowded yards and the demo yards: proven ones are asked again, by the whole check. 500 findings at once by
// hand: YARDWRIGHT_MANY=1 build/tests/yardwright_tests "The least change of a finding*"
#include "geom/grow/least_change.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>

#include "geom/check/live_check.hpp"
#include "geom/grow/part_of_mend.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "tests/geom/kept.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

constexpr double a_little_less = 0.98;

bool is_wanting(const Finding& finding) { return finding.verdict <= Verdict::caution; }

std::map<std::string, Verdict> verdicts_of(const Findings& findings) {
  std::map<std::string, Verdict> verdicts;
  for (const Finding& one : findings) {
    const auto [at, is_new] = verdicts.try_emplace(one.id, one.verdict);
    if (!is_new) at->second = std::min(at->second, one.verdict);
  }
  return verdicts;
}

Findings answered(const Site& site) {
  LiveCheck anew{shipped_catalogs()};
  anew.ask(site);
  return all_findings(anew.answers());
}

bool passes(const Findings& after, const Finding& finding) {
  return std::ranges::none_of(after,
                              [&](const Finding& one) { return one.id == finding.id && one.verdict != Verdict::pass; });
}

/// The first finding that is worse than before, or new and no advice on what failed before.
std::string broken(const Findings& before, const Findings& after) {
  const std::map<std::string, Verdict> verdicts = verdicts_of(before);
  for (const Finding& one : after) {
    const auto was = verdicts.find(one.id);
    const bool eased = one.verdict == Verdict::caution && std::ranges::any_of(before, [&](const Finding& other) {
                         return is_wanting(other) && family(other.rule) == family(one.rule) && other.items == one.items;
                       });
    if (was == verdicts.end() ? is_wanting(one) && !eased : one.verdict < was->second) return one.id;
  }
  return "";
}

struct Tally {
  int asked = 0, single = 0, pair = 0, none = 0, in_parts = 0;
};

class Trial {
 public:
  explicit Trial(Site site)
      : site_{std::move(site)},
        answers_{check(site_, shipped_catalogs())},
        changes_{site_, answers_, shipped_catalogs()} {
    all_ = all_findings(answers_);
  }

  void ask(Tally& tally, int most) {
    for (const Finding& finding : all_) {
      if (!is_wanting(finding) || tally.asked >= most) continue;
      ++tally.asked;
      INFO(sentence(finding, UnitSystem::metric));
      const Found found = changes_.of(finding);
      if (!found.least) {
        ++tally.none;
        continue;
      }
      INFO(change_words(*found.least, UnitSystem::metric));
      ++(found.least->mends.size() == 1 ? tally.single : tally.pair);
      const Findings after = answered(yardwright::apply(site_, found.least->edits()));
      CHECK(passes(after, finding));
      CHECK(broken(all_, after) == "");
      if (found.least->mends.size() == 1) ask_for_less(tally, finding, found.least->mends.front());
    }
  }

 private:
  /// A little less of the only mend leaves the finding or breaks something.
  void ask_for_less(Tally& tally, const Finding& finding, const Mend& mend) {
    const auto less = part_of(mend, a_little_less, site_, site_);
    if (!less) return;
    ++tally.in_parts;
    const Findings after = answered(yardwright::apply(site_, less->edits));
    CHECK((!passes(after, finding) || broken(all_, after) != ""));
  }

  Site site_;
  Answers answers_;
  LeastChanges changes_;
  Findings all_;
};

}  // namespace

TEST_CASE("The least change of a finding makes it pass and breaks nothing, and a little less of it does not") {
  const bool many = std::getenv("YARDWRIGHT_MANY") != nullptr;
  Tally tally;
  Trial{scenes::old_yard()}.ask(tally, 500);
  for (unsigned seed = 1; seed <= (many ? 40u : 1u); ++seed) Trial{scenes::crowded_yard(seed)}.ask(tally, 500);
  const std::string told = fmt::format("{} findings: {} by one change ({} in parts), {} by two, {} by none",
                                       tally.asked, tally.single, tally.in_parts, tally.pair, tally.none);
  if (many) WARN(told);
  INFO(told);
  CHECK(tally.single > 0);
}
