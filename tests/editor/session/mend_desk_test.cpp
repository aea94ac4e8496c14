#include "editor/session/mend_desk.hpp"

#include <catch2/catch.hpp>
#include <chrono>

#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

Answers answers_of(const Site& site, std::uint64_t revision) {
  Answers answers = check(site, shipped_catalogs());
  answers.revision = revision;
  return answers;
}

void wait_for(const MendDesk& desk) {
  const auto begun = std::chrono::steady_clock::now();
  while (desk.is_seeking() && std::chrono::steady_clock::now() - begun < std::chrono::minutes{3})
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  REQUIRE_FALSE(desk.is_seeking());
}

void wait_for_news(const MendDesk& desk, int after) {
  const auto begun = std::chrono::steady_clock::now();
  while (desk.news() <= after && std::chrono::steady_clock::now() - begun < std::chrono::minutes{3})
    std::this_thread::sleep_for(std::chrono::milliseconds{2});
  REQUIRE(desk.news() > after);
}

}  // namespace

TEST_CASE("Every failing finding of the question that is shown is sought a least change, which one click takes",
          "[session]") {
  Session session = session_of(scenes::old_yard());
  session.phase = static_cast<int>(session.site().phases.size()) - 1;
  const Site site = as_of(session.site(), session.phase);
  const Answers answers = answers_of(site, 1);
  MendDesk desk{shipped_catalogs()};
  CHECK(desk.record() == nullptr);
  desk.ask(site, answers, Question::clear);
  wait_for_news(desk, 0);
  wait_for(desk);
  const auto record = desk.record();
  REQUIRE(record != nullptr);
  CHECK(record->site == site);
  std::size_t taken = 0;
  for (const Finding& finding : findings_of(answers, Question::clear)) {
    INFO(finding.id);
    CHECK(record->found.contains(finding.id) == grow::wants_change(finding));
    if (!record->found.contains(finding.id) || !record->found.at(finding.id).least) continue;
    Session changed = session;
    take_change(changed, *record->found.at(finding.id).least);
    const Answers after = check(as_of(changed.site(), changed.phase), shipped_catalogs());
    for (const Finding& now : all_findings(after)) CHECK_FALSE((now.id == finding.id && grow::wants_change(now)));
    undo(changed);
    CHECK(changed.site() == session.site());
    ++taken;
  }
  CHECK(taken > 0);
}

TEST_CASE("Another question of the same yard adds to what is known; another yard begins anew", "[session]") {
  const Site site = scenes::old_yard();
  MendDesk desk{shipped_catalogs()};
  desk.ask(site, answers_of(site, 1), Question::clear);
  wait_for_news(desk, 0);
  wait_for(desk);
  const std::size_t of_clear = desk.record()->found.size();
  int news = desk.news();
  desk.ask(site, answers_of(site, 1), Question::reach);
  wait_for_news(desk, news);
  wait_for(desk);
  CHECK(desk.record()->found.size() >= of_clear);
  Site other = site;
  other.items.clear();
  news = desk.news();
  desk.ask(other, answers_of(other, 2), Question::reach);
  wait_for_news(desk, news);
  wait_for(desk);
  CHECK(desk.record()->site == other);
  CHECK(desk.record()->found.empty());
}
