#include "editor/session/session.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Session with_two_bins() {
  Session session = session_of(Site{});
  for (const double east : {0.0, 30.0}) {
    take_tool(session, tool_for(Bin{}));
    step_tool(session, clicked(session.tool, session.site(), {{east, 0}, {}}));
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
