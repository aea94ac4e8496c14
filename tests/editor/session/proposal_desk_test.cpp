#include "editor/session/proposal_desk.hpp"

#include <catch2/catch.hpp>
#include <thread>

#include "editor/session/brief_rows.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

constexpr double ft = 0.3048;

ProposalAsk an_ask(double wanted_bu, int tries) {
  ProposalAsk ask{{}, 3, tries};
  ask.brief.wanted_m3 = GrainVolume::bushels(wanted_bu).as_cubic_metres();
  ask.brief.bins = {{36 * ft, 24 * ft}};
  return ask;
}

void wait_for(const ProposalDesk& desk) {
  while (desk.is_seeking()) std::this_thread::sleep_for(std::chrono::milliseconds{5});
}

}  // namespace

TEST_CASE("Proposals are sought beside the window, and one is built as one step that can be taken back", "[session]") {
  Session session = session_of(scenes::new_yard());
  ProposalDesk desk{shipped_catalogs()};
  desk.seek(session.site(), an_ask(20'000, 64), shipped_price_book());
  wait_for(desk);
  const auto record = desk.record();
  REQUIRE(record != nullptr);
  CHECK(record->whole);
  CHECK(desk.progress().tried >= 64);
  REQUIRE_FALSE(record->found.list.empty());
  CHECK(is_of(*record, session));

  const Site before = session.site();
  const int phase = session.phase;
  build_proposal(session, record->found.list.front());
  CHECK(session.site().items.size() > before.items.size());
  CHECK(session.phase == static_cast<int>(before.phases.size()));
  CHECK_FALSE(is_of(*record, session));
  // Nothing passes that failed to be asked: the whole yard, asked afresh, fails nowhere that it did not.
  const Answers after = check(as_of(session.site(), session.phase), shipped_catalogs());
  for (const Finding& finding : findings_of(after, Question::reach)) CHECK(finding.verdict != Verdict::fail);
  undo(session);
  CHECK(session.site() == before);
  CHECK(session.phase == phase);
}

TEST_CASE("A search that is stopped tells what it found, and one that cannot begin says why", "[session]") {
  ProposalDesk desk{shipped_catalogs()};
  desk.seek(scenes::new_yard(), an_ask(250'000, 1'000'000), shipped_price_book());
  while (desk.progress().tried < 16) std::this_thread::sleep_for(std::chrono::milliseconds{5});
  desk.stop();
  wait_for(desk);
  REQUIRE(desk.record() != nullptr);
  CHECK_FALSE(desk.record()->whole);
  CHECK(desk.record()->found.progress.tried < 1'000'000);

  Site bare;
  desk.seek(bare, an_ask(20'000, 16), shipped_price_book());
  wait_for(desk);
  CHECK(desk.record() == nullptr);
  REQUIRE(desk.refusal().size() >= 2);
  CHECK(desk.refusal()[0].what == "the lot is not drawn");
}

TEST_CASE(
    "The brief of the card is as much again of what stands, and what is typed is taken or refused with a sentence",
    "[session]") {
  const Site yard = scenes::new_yard();
  const Answers answers = check(yard, shipped_catalogs());
  ProposalAsk ask{usual_brief(yard, answers, shipped_catalogs().rules)};
  double stored_m3 = 0;
  for (const pace::GrainCapacity& one : answers.pace->capacity) stored_m3 += one.dry.as_cubic_metres();
  CHECK(ask.brief.wanted_m3 == stored_m3);
  CHECK_FALSE(ask.brief.bins.empty());
  CHECK(ask.brief.discharge_m.size() == 3);

  const auto typed = [&](std::string_view key, std::string_view text) {
    const auto taken = with_brief_row(ask, key, text, UnitSystem::us);
    if (taken) ask = *taken;
    return taken.has_value();
  };
  CHECK(typed("bins", "36ft x 24ft, 48 x 29"));
  REQUIRE(ask.brief.bins.size() == 2);
  CHECK(ask.brief.bins[1].diameter_m == Approx(48 * ft));
  CHECK(typed("legs", " 120ft,130 ft "));
  CHECK(ask.brief.discharge_m == std::vector<double>{120 * ft, 130 * ft});
  CHECK(typed("legs", ""));
  CHECK(ask.brief.discharge_m.empty());
  CHECK(typed("budget", "350,000"));
  CHECK(ask.brief.budget == 350'000);
  CHECK(typed("budget", "any"));
  CHECK_FALSE(ask.brief.budget);
  CHECK(typed("seed", "7"));
  CHECK(ask.seed == 7);
  CHECK(typed("advice", "yes"));
  CHECK(ask.brief.bears_advice);
  const ProposalAsk before = ask;
  CHECK_FALSE(typed("bins", "36ft"));
  CHECK_FALSE(typed("wanted", "a lot"));
  CHECK_FALSE(typed("most-bins", "0"));
  CHECK_FALSE(typed("seed", "one"));
  CHECK(ask == before);
  CHECK(with_brief_row(ask, "seed", "one", UnitSystem::us).error().where == "seed");
  for (const FieldRow& row : brief_rows(ask, UnitSystem::us, shipped_catalogs())) {
    INFO(row.key << ": " << row.text);
    CHECK(typed(row.key, row.text));
  }
}
