#include "editor/session/shown_line.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

Session session_with(std::vector<Thing> things) {
  Site site;
  for (const Thing& thing : things) site.items.push_back({next_id(site), "", 0, {}, thing});
  return session_of(site);
}

const SitePath bent{{0, 0}, {10, 0}, {10, 20}};

}  // namespace

TEST_CASE("The selected line is cut along, whatever kind it is", "[session][section]") {
  for (const Thing& thing : {Thing{Berm{bent}}, Thing{Swale{bent}}, Thing{Drive{bent}}, Thing{Culvert{bent}},
                             Thing{Tunnel{bent}}, Thing{Dimension{bent}}}) {
    Session session = session_with({thing});
    CHECK_FALSE(shown_line(session));
    select(session, {1});
    const auto line = shown_line(session);
    REQUIRE(line);
    CHECK(line->path == bent);
    CHECK(line->along == ItemId{1});
    CHECK(line->title == "along " + title_of(session.site().items.front()));
  }
}

TEST_CASE("What is measured goes before what is selected, once both its ends are there", "[session][section]") {
  Session session = session_with({Berm{bent}});
  select(session, {1});
  session.tool = measure_tool();
  session.tool.points = {{1, 1}};
  CHECK(shown_line(session)->along == ItemId{1});
  session.tool.points = {{1, 1}, {4, 5}};
  CHECK(shown_line(session)->path == session.tool.points);
  CHECK_FALSE(shown_line(session)->along);
  session.tool.points = {{1, 1}, {1, 1}};
  CHECK(shown_line(session)->along == ItemId{1});
}

TEST_CASE("An area, a bin, a line without length or two lines at once cut nothing", "[session][section]") {
  Session session = session_with({Pad{bent}, Bin{}, Drive{.path = {{3, 3}, {3, 3}}}, Berm{bent}});
  for (const int id : {1, 2, 3}) {
    select_nothing(session);
    select(session, {id});
    CHECK_FALSE(shown_line(session));
  }
  select(session, {4}, true);
  CHECK_FALSE(shown_line(session));
}

TEST_CASE("Without a line the ground is cut through what is selected, else through what Drain finds worst",
          "[session][section]") {
  Session session = session_with({Bin{.at = {30, 40}}, Pit{.at = {50, 60}}});
  Answers answers;
  CHECK_FALSE(line_through_place(session, answers));
  Finding gone, about_pit;
  gone.items = {ItemId{77}};
  about_pit.id = "pit";
  about_pit.items = {ItemId{2}};
  auto drain = std::make_shared<drain::Answer>();
  drain->findings = {gone, about_pit};
  answers.drain = drain;
  CHECK(line_through_place(session, answers)->title == "west to east through pit 2");
  select(session, {1});
  const auto line = line_through_place(session, answers);
  REQUIRE(line);
  CHECK(line->path.front().y == 40);
  CHECK((line->path.front().x + line->path.back().x) / 2 == Approx(30));
  CHECK(line->path.back().x > line->path.front().x);
}
