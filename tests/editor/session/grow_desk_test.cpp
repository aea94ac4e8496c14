#include "editor/session/grow_desk.hpp"

#include <catch2/catch.hpp>

#include "editor/session/room_desk.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::scenes;
using namespace yardwright::session;

namespace {

constexpr std::chrono::minutes long_enough{2};

Session yard_with_one_bin(int highest_id = 0) {
  Site site;
  site.lot = rectangular_lot(90, 70, LotEdge::neighbour);
  SceneBuilder yard{site};
  const ItemId leg = yard.add("Leg", Leg{.at = {45, 35}, .discharge_height_m = 30, .outlets = 8});
  const ItemId bin = yard.add("North", Bin{.at = {45, 50}, .diameter_m = 9, .eave_height_m = 8});
  yard.spout(leg, bin);
  site = yard.site();
  if (highest_id > 0) {
    site.phases.emplace_back("later");
    site.items.push_back({ItemId{highest_id}, "Later", 1, {}, Tank{.at = {10, 10}}});
  }
  return session_of(site);
}

std::shared_ptr<const GrowRecord> found(GrowDesk& desk, const Session& session, const std::optional<Thing>& chosen) {
  desk.ask(grow_ask(session, check(as_of(session.site(), session.phase), shipped_catalogs()), chosen));
  REQUIRE(desk.wait(long_enough));
  return desk.record();
}

}  // namespace

TEST_CASE("Room for the next bin is found beside the window, and is stale once the yard or the bin is another",
          "[session]") {
  Session session = yard_with_one_bin();
  GrowDesk desk{shipped_catalogs()};
  CHECK(desk.record() == nullptr);
  const auto ground = found(desk, session, std::nullopt);
  REQUIRE(ground != nullptr);
  CHECK(is_of(*ground, session, std::nullopt));
  CHECK(ground->answer.free_m2 > 0);
  CHECK_FALSE(ground->answer.spots.empty());
  const Thing larger = Bin{.diameter_m = 14, .eave_height_m = 8};
  CHECK_FALSE(is_of(*ground, session, larger));
  CHECK(found(desk, session, larger)->answer.free_m2 < ground->answer.free_m2);
  place_newcomer(session, *ground, {ground->answer.spots.front().at});
  CHECK_FALSE(is_of(*ground, session, std::nullopt));
}

TEST_CASE("What is in hand is sought room for, else what was chosen, else a bin like the last", "[session]") {
  Session session = yard_with_one_bin();
  CHECK(std::get<Bin>(thing_sought(session, std::nullopt)).diameter_m == 9);
  CHECK(std::get<Bin>(thing_sought(session, Bin{.diameter_m = 12})).diameter_m == 12);
  take_tool(session, tool_for(Tank{}));
  CHECK(std::holds_alternative<Tank>(thing_sought(session, Bin{.diameter_m = 12})));
  take_tool(session, tool_for(Drive{}));
  CHECK(std::holds_alternative<Bin>(thing_sought(session, std::nullopt)));
}

TEST_CASE("Placing takes one step and a new bin gets its spout, with numbers that no other phase has", "[session]") {
  Session session = yard_with_one_bin(40);
  GrowDesk desk{shipped_catalogs()};
  const auto ground = found(desk, session, std::nullopt);
  const Site before = session.site();
  place_newcomer(session, *ground, {ground->answer.spots.front().at});
  CHECK(session.site().items.size() == before.items.size() + 2);
  REQUIRE(find(session.site(), {41}) != nullptr);
  CHECK(as<Bin>(*find(session.site(), {41})) != nullptr);
  CHECK(as<Spout>(*find(session.site(), {42})) != nullptr);
  CHECK(find(session.site(), {40})->name == "Later");
  CHECK(session.selection == Selection{ItemId{41}});
  undo(session);
  CHECK(session.site() == before);
}

TEST_CASE("What a later phase builds is known beside the window, and a change of it makes what was found stale",
          "[session]") {
  Session session = yard_with_one_bin(40);
  session.phase = 0;
  GrowDesk desk{shipped_catalogs()};
  const auto later_ground = [&] {
    const Findings all = found(desk, session, std::nullopt)->answer.findings;
    const auto one = std::ranges::find(all, "grow.later-ground", &Finding::rule);
    REQUIRE(one != all.end());
    return *one;
  };
  CHECK(later_ground().verdict == Verdict::pass);
  const auto before = desk.record();
  Item over = *find(session.site(), {40});
  std::get<Tank>(over.thing).at = {45, 50};
  perform(session, {PutItem{over}});
  CHECK_FALSE(is_of(*before, session, std::nullopt));
  CHECK(later_ground().title == "North stands on ground that Later needs later");
}

TEST_CASE("How many fit is counted beside the window, and all of them pass where they are built", "[session]") {
  Session session = yard_with_one_bin();
  GrowDesk desk{shipped_catalogs()};
  RoomDesk rooms;
  const auto ground = found(desk, session, std::nullopt);
  rooms.count(ground);
  const auto begun = std::chrono::steady_clock::now();
  while (rooms.is_counting() && std::chrono::steady_clock::now() - begun < long_enough)
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  REQUIRE_FALSE(rooms.is_counting());
  const auto room = rooms.record();
  REQUIRE(room != nullptr);
  CHECK(room->whole);
  REQUIRE(room->room.places.size() > 1);
  CHECK(static_cast<int>(room->room.places.size()) <= room->room.at_most);
  REQUIRE(room->taller.size() == 1);
  CHECK(room->taller.front().heights.size() > 1);
  place_newcomer(session, *ground, room->room.places);
  const Answers after = check(session.site(), shipped_catalogs());
  for (const Question question : {Question::reach, Question::clear}) {
    for (const Finding& finding : findings_of(after, question)) {
      INFO(finding.id << ' ' << finding.title);
      CHECK(finding.verdict != Verdict::fail);
    }
  }
}

TEST_CASE("A count that is stopped keeps what it has", "[session]") {
  Session session = yard_with_one_bin();
  GrowDesk desk{shipped_catalogs()};
  RoomDesk rooms;
  rooms.count(found(desk, session, Bin{.diameter_m = 2, .eave_height_m = 4}));
  rooms.stop();
  const auto begun = std::chrono::steady_clock::now();
  while (rooms.is_counting() && std::chrono::steady_clock::now() - begun < long_enough)
    std::this_thread::sleep_for(std::chrono::milliseconds{5});
  REQUIRE(rooms.record() != nullptr);
  CHECK_FALSE(rooms.record()->whole);
}
