#include "editor/session/session.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Session with_two_bins() {
  Session session = session_of(Site{});
  for (const double east : {0.0, 30.0}) {
    take_tool(session, tool_for(Bin{}));
    click_tool(session, {east, 0}, {});
  }
  return session;
}

}  // namespace

TEST_CASE("A yard is changed until it is undone to what was saved") {
  Session session = session_of(Site{});
  CHECK_FALSE(session.is_changed());
  perform(session, {SetName{"Cotter Lane", {}}});
  CHECK(session.is_changed());
  undo(session);
  CHECK_FALSE(session.is_changed());
  redo(session);
  CHECK(session.is_changed());
}

TEST_CASE("Undo forgets the selection of what is no longer there") {
  Session session = with_two_bins();
  CHECK(session.selection == Selection{{2}});
  undo(session);
  CHECK(session.selection.empty());
}

TEST_CASE("Edits together are one step") {
  Session session = with_two_bins();
  perform(session, {SetName{"a", {}}, RemoveItem{{1}}, RemoveItem{{2}}});
  CHECK(session.site().items.empty());
  undo(session);
  CHECK(session.site().items.size() == 2);
}

TEST_CASE("Copies stand clear of their originals and are selected") {
  Session session = with_two_bins();
  duplicate_selected(session);
  REQUIRE(session.site().items.size() == 3);
  CHECK(session.selection == Selection{{3}});
  const Bin& copy = std::get<Bin>(session.site().items[2].thing);
  CHECK(copy.at.x - 30 > copy.diameter_m);
}

TEST_CASE("Selecting with a held shift adds and takes away") {
  Session session = with_two_bins();
  select(session, {1});
  select(session, {2}, true);
  CHECK(session.selection == Selection{{1}, {2}});
  select(session, {1}, true);
  CHECK(lone_selected(session)->id == ItemId{2});
}

namespace {

Session with_phases() {
  Site site;
  site.phases = {"today", "next year", "later"};
  Session session = session_of(site);
  session.phase = 1;
  return session;
}

}  // namespace

TEST_CASE("What is placed, drawn, joined or copied is built in the phase that is shown") {
  Session session = with_phases();
  take_tool(session, tool_for(Leg{}));
  click_tool(session, {0, 0}, {});
  take_tool(session, tool_for(Bin{}));
  click_tool(session, {20, 0}, {});
  take_tool(session, tool_for(Spout{}));
  click_tool(session, {0, 0}, {1});
  click_tool(session, {20, 0}, {2});
  take_tool(session, tool_for(Drive{}));
  for (const double east : {0.0, 50.0}) click_tool(session, {east, -20}, {});
  finish_tool(session);
  REQUIRE(session.site().items.size() == 4);
  for (const Item& item : session.site().items) CHECK(item.phase == 1);

  session.phase = 2;
  select(session, {2});
  duplicate_selected(session);
  CHECK(session.site().items.back().phase == 2);
  CHECK(find(session.site(), {2})->phase == 1);
}

TEST_CASE("A copy of what goes later is there as long as it should be") {
  Session session = with_phases();
  take_tool(session, tool_for(Bin{}));
  click_tool(session, {0, 0}, {});
  Item gone = session.site().items.front();
  gone.gone_in = 2;
  perform(session, {PutItem{gone}});
  select(session, {1});
  duplicate_selected(session);
  CHECK(session.site().items.back().gone_in == 2);
  session.phase = 2;
  duplicate_selected(session);
  CHECK_FALSE(session.site().items.back().gone_in);
}

TEST_CASE("A mend that was found without what is built later puts nothing in its place") {
  Session session = with_phases();
  take_tool(session, tool_for(Bin{}));
  click_tool(session, {0, 0}, {});
  session.phase = 2;
  take_tool(session, tool_for(Building{}));
  click_tool(session, {60, 0}, {});
  session.phase = 1;
  const Item pad{next_id(as_of(session.site(), 1)), "Pad", 1, {}, Pad{}};
  REQUIRE(pad.id == ItemId{2});  // the building's, which the mend's search did not see
  take_mend(session, {"raise", Quantity::length, 0, 0, {PutItem{pad}}});
  REQUIRE(session.site().items.size() == 3);
  CHECK(as<Building>(*find(session.site(), {2})) != nullptr);
  CHECK(as<Pad>(*find(session.site(), {3})) != nullptr);
}
