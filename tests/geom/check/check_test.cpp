#include "geom/check/live_check.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::scenes;

TEST_CASE("An edit asks again only the questions that read what it changed") {
  LiveCheck live{shipped_catalogs()};
  Site site = one_bin_yard(70, 30);
  live.ask(site);
  const int asked_before = live.times_asked(Question::reach);
  site.name = "Another name";
  site.items.push_back({{9}, "", 0, std::nullopt, Dimension{{{0, 0}, {1, 0}}}});
  live.ask(site);
  CHECK(live.times_asked(Question::reach) == asked_before);
  site.items[1].thing = moved(site.items[1].thing, {1, 0});
  live.ask(site);
  CHECK(live.times_asked(Question::reach) == asked_before + 1);
}

TEST_CASE("A route that is drawn as it was is not driven again, and answers the same") {
  LiveCheck live{shipped_catalogs()};
  Site site = old_yard();
  live.ask(site);
  for (Item& item : site.items) {
    if (as<Bin>(item) == nullptr) continue;
    item.thing = moved(item.thing, {0.4, -0.3});
    live.ask(site);
    live.seek_mends();
    REQUIRE(all_findings(live.answers()) == all_findings(check(site, shipped_catalogs())));
  }
}

TEST_CASE("While something is dragged the long mends are left, and said to be; later they are found") {
  LiveCheck live{shipped_catalogs()};
  const Site site = old_yard();
  live.ask(site);
  CHECK_FALSE(live.answers().turn->mends_sought);
  std::stop_source stopped;
  stopped.request_stop();
  live.seek_mends(stopped.get_token());
  CHECK_FALSE(live.answers().turn->mends_sought);
  live.seek_mends();
  CHECK(live.answers().turn->mends_sought);
  CHECK(std::ranges::any_of(live.answers().turn->findings, [](const Finding& one) { return !one.mends.empty(); }));
}

TEST_CASE("A live check after any edit equals a check from scratch") {
  LiveCheck live{shipped_catalogs()};
  Site site = one_bin_yard(70, 30);
  live.ask(site);
  site.items[1].thing = moved(site.items[1].thing, {20, 3});
  site.rule_overrides = {{"reach.slope-dry", 40, Basis::local, "our millwright"}};
  live.ask(site);
  live.seek_mends();
  CHECK(all_findings(live.answers()) == all_findings(check(site, shipped_catalogs())));
}

TEST_CASE("A site's own value for a rule is judged by, with its own basis") {
  Site site = one_bin_yard(70, 30);
  site.rule_overrides = {{"reach.slope-dry", 60, Basis::local, "our millwright"}};
  const Findings findings = all_findings(check(site, shipped_catalogs()));
  const auto slope = std::ranges::find(findings, "reach.slope-dry", &Finding::rule);
  REQUIRE(slope != findings.end());
  CHECK(slope->required == 60);
  CHECK(slope->basis == Basis::local);
  CHECK(slope->source == "our millwright");
}

TEST_CASE("Every question answers something, so that none passes by silence") {
  const Answers answers = check(Site{}, shipped_catalogs());
  for (const Question question : every_question) {
    INFO(names_of(question)[static_cast<std::size_t>(question)]);
    CHECK_FALSE(findings_of(answers, question).empty());
    CHECK(worst(findings_of(answers, question)) == Verdict::not_checked);
  }
}
