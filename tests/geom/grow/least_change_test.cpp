// Least changes over crowded yards and the demo yards: proven ones are asked again, by the whole check. 500 findings at once by
// hand: YARDWRIGHT_MANY=1 build/tests/yardwright_tests "The least change of a finding*"
#include "geom/grow/least_change.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <map>

#include "geom/check/live_check.hpp"
#include "geom/grow/paired_changes.hpp"
#include "geom/grow/part_of_mend.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "tests/geom/kept.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scenes.hpp"

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

/// Whether two things too near each other were so before, though Clear told of a nearer one alone: asked of a yard with
/// nothing else in it.
bool was_so(const Site& site, const Finding& now) {
  Site alone = site;
  std::erase_if(alone.items, [&](const Item& item) { return std::ranges::count(now.items, item.id) == 0; });
  const Findings told = answered(alone);
  const auto same = std::ranges::find(told, now.id, &Finding::id);
  return now.question == Question::clear && !now.rule.ends_with("-room") && same != told.end() &&
         same->verdict <= now.verdict;
}

/// Whether it came down from failing to advice on the same things.
bool is_eased(const Findings& before, const Finding& now) {
  return now.verdict == Verdict::caution && std::ranges::any_of(before, [&](const Finding& one) {
           return is_wanting(one) && family(one.rule) == family(now.rule) && one.items == now.items;
         });
}

/// The first finding that is worse than before, or new.
std::string broken(const Site& site, const Findings& before, const Findings& after) {
  const std::map<std::string, Verdict> verdicts = verdicts_of(before);
  for (const Finding& one : after) {
    const auto was = verdicts.find(one.id);
    const bool worse = was == verdicts.end() ? is_wanting(one) && !is_eased(before, one) && !was_so(site, one)
                                             : one.verdict < was->second;
    if (worse) return one.id;
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
      CHECK(broken(site_, all_, after) == "");
      if (found.least->mends.size() == 1) ask_for_less(tally, finding, found.least->mends.front());
    }
  }

 private:
  /// Less than a twentieth of a finding's own mend is not sought.
  static bool is_smallest(const Finding& finding, const Mend& mend) {
    return std::ranges::any_of(finding.mends, [&](const Mend& own) {
      return own.action == mend.action && std::abs(mend.change) < 0.052 * std::abs(own.change);
    });
  }

  /// A little less of the only mend leaves the finding or breaks something.
  void ask_for_less(Tally& tally, const Finding& finding, const Mend& mend) {
    const auto less = part_of(mend, a_little_less, site_, site_);
    if (!less || is_smallest(finding, mend)) return;
    ++tally.in_parts;
    const Findings after = answered(yardwright::apply(site_, less->edits));
    CHECK((!passes(after, finding) || broken(site_, all_, after) != ""));
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
  for (unsigned seed = 1; seed <= (many ? 40u : 3u) && tally.asked < 500; ++seed)
    Trial{scenes::crowded_yard(seed)}.ask(tally, 500);
  const std::string told = fmt::format("{} findings: {} by one change ({} in parts), {} by two, {} by none",
                                       tally.asked, tally.single, tally.in_parts, tally.pair, tally.none);
  if (many) WARN(told);
  INFO(told);
  CHECK(tally.single > 0);
}

namespace {

const Finding& named(const Findings& findings, const std::string& id) {
  const auto found = std::ranges::find(findings, id, &Finding::id);
  REQUIRE(found != findings.end());
  return *found;
}

}  // namespace

TEST_CASE("The same yard gives the same changes, whatever was asked of it before") {
  const Site site = scenes::old_yard();
  const Answers answers = check(site, shipped_catalogs());
  const Finding& slope = named(answers.reach->findings, "reach.slope-dry:11");
  LeastChanges once{site, answers, shipped_catalogs()}, again{site, answers, shipped_catalogs()};
  again.of(named(answers.clear->findings, "clear.line-portable:10-23"));
  const Found one = once.of(slope), other = again.of(slope);
  REQUIRE((one.least && other.least));
  CHECK(one.least->edits() == other.least->edits());
  CHECK(one.harmful.size() == other.harmful.size());
}

TEST_CASE("A search that is stopped proves nothing") {
  const Site site = scenes::old_yard();
  const Answers answers = check(site, shipped_catalogs());
  LeastChanges changes{site, answers, shipped_catalogs()};
  std::stop_source stopped;
  stopped.request_stop();
  CHECK_FALSE(changes.of(answers.reach->findings.front(), stopped.get_token()).least);
}

TEST_CASE("A long spout is drawn on its truss, and where the leg is too low for it, the leg is raised too") {
  const auto found_with = [](double outlet_ft) {
    const Site site = yardwright::apply(scenes::one_bin_yard(outlet_ft, 60), RemoveItem{scenes::spout_id});
    const Answers answers = check(site, shipped_catalogs());
    return LeastChanges{site, answers, shipped_catalogs()}.of(named(answers.reach->findings, "reach.filled:2"));
  };
  const Found high = found_with(100), low = found_with(70);
  REQUIRE(high.least.has_value());
  CHECK(change_words(*high.least, UnitSystem::us) == "draw a spout from Leg 1, on a truss");
  REQUIRE(high.harmful.size() == 1);
  CHECK(high.harmful.front().breaks.front().rule == "reach.free-span");
  REQUIRE(low.least.has_value());
  REQUIRE(low.least->mends.size() == 2);
  CHECK(low.least->mends.front().action == "draw a spout from Leg 1, on a truss");
  CHECK(low.least->mends.back().action == "move North 1 toward Leg 1");
}

TEST_CASE("Two ways of mending are each gone a part, where neither may be gone alone") {
  const Site site = scenes::one_bin_yard(70, 60);
  const Answers answers = check(site, shipped_catalogs());
  Finding slope = named(answers.reach->findings, "reach.slope-dry:3");
  REQUIRE(slope.mends.size() == 3);
  slope.mends = {slope.mends[0], slope.mends[1]};
  const Catalogs catalogs = in_force(site, shipped_catalogs());
  const Prover prover{{site, answers, catalogs}, slope};
  const auto pair = paired_change(prover, {});
  REQUIRE(pair.has_value());
  CHECK(passes(answered(yardwright::apply(site, pair->edits())), slope));
  for (std::size_t i = 0; i < 2; ++i) {
    const Mend& part = pair->mends[i];
    const auto whole = std::ranges::find(slope.mends, part.action, &Mend::action);
    REQUIRE(whole != slope.mends.end());
    CHECK(part.change > 0);
    CHECK(part.change < 0.8 * whole->change);
  }
}
