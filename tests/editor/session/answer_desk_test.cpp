#include "editor/session/answer_desk.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::session;
using namespace std::chrono_literals;

namespace {

bool comes_to_rest(const AnswerDesk& desk) {
  for (int tries = 0; tries < 6000 && !desk.is_at_rest(); ++tries) std::this_thread::sleep_for(10ms);
  return desk.is_at_rest();
}

}  // namespace

TEST_CASE("The desk comes to rest with the answers of a check from scratch", "[desk]") {
  AnswerDesk desk{shipped_catalogs()};
  Site site = scenes::old_yard();
  for (int step = 0; step < 20; ++step) {
    site.items[3].thing = moved(site.items[3].thing, {0.2, 0.1});
    desk.ask(site);
  }
  REQUIRE(comes_to_rest(desk));
  CHECK(all_findings(desk.answers()) == all_findings(check(site, shipped_catalogs())));
}

TEST_CASE("From handing in a site until it is answered, what reads the change shows as stale", "[desk]") {
  AnswerDesk desk{shipped_catalogs()};
  Site site = scenes::old_yard();
  desk.ask(site);
  REQUIRE(comes_to_rest(desk));
  CHECK_FALSE(desk.answers().is_stale(Question::reach));
  site.name = "Another name";
  desk.ask(site);
  REQUIRE(desk.wait(60s));
  CHECK_FALSE(desk.answers().is_stale(Question::reach));
}

TEST_CASE("Desks that are left while they work end, and the next one answers as a check from scratch", "[desk]") {
  const Site site = scenes::old_yard();
  for (int i = 0; i < 5; ++i) {
    AnswerDesk left{shipped_catalogs()};
    left.ask(site);
  }
  AnswerDesk next{shipped_catalogs()};
  next.ask(site);
  REQUIRE(comes_to_rest(next));
  CHECK(all_findings(next.answers()) == all_findings(check(site, shipped_catalogs())));
}
