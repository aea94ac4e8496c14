#include "editor/session/tool.hpp"

#include <catch2/catch.hpp>

#include "geom/site/footprint.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

/// A tool led through clicks: what the canvas does.
struct Hand {
  Site site;
  Tool tool;
  Selection selection;

  void take(const ToolStep& step) {
    tool = step.tool;
    site = yardwright::apply(site, step.edits);
    selection = step.selection;
  }
  void click(SitePoint at, ItemId on = {}) { take(clicked(tool, site, {at, on})); }
  void finish() { take(finished(tool, site)); }
};

}  // namespace

TEST_CASE("One click places a thing there, named, selected, and the tool stays for the next one") {
  Hand hand{{}, tool_for(Bin{}), {}};
  hand.click({12, 8});
  REQUIRE(hand.site.items.size() == 1);
  CHECK(place_of(hand.site.items[0].thing) == SitePoint{12, 8});
  CHECK(hand.site.items[0].name == "Bin 1");
  CHECK(hand.selection == Selection{{1}});
  CHECK(hand.tool == tool_for(Bin{}));
  hand.click({40, 8});
  CHECK(hand.site.items.size() == 2);
  CHECK(cancelled(hand.tool) == Tool{});
}

TEST_CASE("A doubled click places one thing, not two on the same spot") {
  Hand hand{{}, tool_for(Bin{}), {}};
  hand.click({12, 8});
  const ToolStep again = clicked(hand.tool, hand.site, {{12.4, 8}, {1}});
  CHECK(again.edits.empty());
  CHECK(again.notice.starts_with("Bin 1 stands here"));
  hand.tool = tool_for(Leg{});
  hand.click({12, 8});  // another kind may stand there: what is wrong with it is for the questions to say
  CHECK(hand.site.items.size() == 2);
}

TEST_CASE("Every tool that can be used again stays in hand") {
  for (const Thing& thing : every_kind()) {
    Hand hand{{}, tool_for(thing), {}};
    if (hand.tool.doing == Doing::join) continue;  // its test is below
    CAPTURE(kind_key(thing));
    for (const SitePoint at : {SitePoint{0, 0}, SitePoint{90, 0}, SitePoint{70, 60}}) hand.click(at);
    if (hand.tool.doing == Doing::draw) hand.finish();
    CHECK_FALSE(hand.site.items.empty());
    CHECK(hand.tool == tool_for(thing));
    CHECK(instruction(hand.tool).find("Escape puts the tool down") != std::string::npos);
  }
}

TEST_CASE("What drains a yard is put where it was clicked: lines along their clicks, a basin and a downspout at one") {
  const SitePath clicks{{10, 20}, {40, 20}, {40, 60}};
  for (const Thing& thing :
       {Thing{RetainingWall{}}, Thing{Curb{}}, Thing{TrenchDrain{}}, Thing{TileLine{}}, Thing{ReceivingDitch{}}}) {
    CAPTURE(kind_key(thing));
    Hand hand{{}, tool_for(thing), {}};
    for (const SitePoint at : clicks) hand.click(at);
    hand.finish();
    REQUIRE(hand.site.items.size() == 1);
    CHECK(kind_key(hand.site.items[0].thing) == kind_key(thing));
    CHECK(*path_of(hand.site.items[0].thing) == clicks);
    hand.click({0, 0});
    hand.finish();  // one click is no line
    CHECK(hand.site.items.size() == 1);
  }
  for (const Thing& thing : {Thing{CatchBasin{}}, Thing{Downspout{}}}) {
    CAPTURE(kind_key(thing));
    Hand hand{{}, tool_for(thing), {}};
    hand.click({7, 9});
    REQUIRE(hand.site.items.size() == 1);
    CHECK(kind_key(hand.site.items[0].thing) == kind_key(thing));
    CHECK(place_of(hand.site.items[0].thing) == SitePoint{7, 9});
  }
}

TEST_CASE("A downspout hangs on the roof that it is placed beside, and on none far from all") {
  Site site;
  site.items = {{{1}, "", 0, {}, Bin{.at = {0, 0}, .diameter_m = 10}}, {{2}, "", 0, {}, Building{.at = {20, 0}}}};
  Hand hand{site, tool_for(Downspout{}), {}};
  hand.click({6, 0});
  hand.click({40, 40});
  CHECK(std::get<Downspout>(hand.site.items[2].thing).of == ItemId{1});
  CHECK(std::get<Downspout>(hand.site.items[3].thing).of == ItemId{});
}

TEST_CASE("Names of new items are not used twice") {
  Hand hand;
  for (int i = 0; i < 3; ++i) {
    hand.tool = tool_for(Bin{});
    hand.click({i * 20.0, 0});
  }
  CHECK(hand.site.items[2].name == "Bin 3");
}

TEST_CASE("A spout goes from a leg to what it fills, and is wet where that is for wet grain") {
  Hand hand{{}, tool_for(Leg{}), {}};
  hand.click({0, 0});
  hand.tool = tool_for(Dryer{});
  hand.click({20, 0});
  hand.tool = tool_for(Spout{});
  hand.click({20, 0}, {2});
  CHECK(hand.site.items.size() == 2);  // a dryer is no beginning
  hand.click({0, 0}, {1});
  hand.click({20, 0}, {2});
  REQUIRE(hand.site.items.size() == 3);
  const Spout& spout = std::get<Spout>(hand.site.items[2].thing);
  CHECK(spout.from == ItemId{1});
  CHECK(spout.to == ItemId{2});
  CHECK(spout.state == GrainState::wet);
  CHECK(hand.tool.doing == Doing::join);  // ready for the next spout
}

TEST_CASE("A drive is drawn click by click; a doubled click adds no second point") {
  Hand hand{{}, tool_for(Drive{}), {}};
  hand.click({0, 0});
  hand.finish();
  CHECK(hand.site.items.empty());
  hand.click({30, 0});
  hand.click({30, 0});
  hand.click({30, 40});
  hand.finish();
  REQUIRE(hand.site.items.size() == 1);
  CHECK(std::get<Drive>(hand.site.items[0].thing).path == SitePath{{0, 0}, {30, 0}, {30, 40}});
}

TEST_CASE("A conveyor knows what it was drawn from and to") {
  Hand hand{{}, tool_for(Bin{}), {}};
  hand.click({0, 0});
  hand.tool = tool_for(Leg{});
  hand.click({20, 0});
  hand.tool = tool_for(Conveyor{});
  hand.click({0, 0});
  hand.click({20, 0});
  hand.finish();
  const Conveyor& conveyor = std::get<Conveyor>(hand.site.items.back().thing);
  CHECK(conveyor.from == ItemId{1});
  CHECK(conveyor.to == ItemId{2});
}

TEST_CASE("The lot's edges are as many as its corners") {
  Hand hand{{}, lot_tool(), {}};
  for (const SitePoint corner : {SitePoint{0, 0}, SitePoint{90, 0}, SitePoint{70, 60}}) hand.click(corner);
  hand.finish();
  CHECK(hand.site.lot.corners.size() == 3);
  CHECK(hand.site.lot.edges.size() == 3);
}

TEST_CASE("A measure stays as a dimension only when it is kept") {
  Hand hand{{}, measure_tool(), {}};
  hand.click({0, 0});
  hand.click({10, 0});
  hand.click({5, 5});
  CHECK(hand.tool.points == SitePath{{5, 5}});
  CHECK(hand.site.items.empty());
  hand.click({5, 9});
  hand.finish();
  REQUIRE(hand.site.items.size() == 1);
  CHECK(std::get<Dimension>(hand.site.items[0].thing).path == SitePath{{5, 5}, {5, 9}});
}

TEST_CASE("Escape takes the points first, then the tool") {
  Hand hand{{}, tool_for(Berm{}), {}};
  hand.click({0, 0});
  hand.tool = cancelled(hand.tool);
  CHECK(hand.tool == tool_for(Berm{}));
  CHECK(cancelled(hand.tool) == Tool{});
}

TEST_CASE("Every kind has a tool that says what to do") {
  for (const Thing& thing : every_kind()) CHECK_FALSE(instruction(tool_for(thing)).empty());
}

TEST_CASE("A route stops at the gates and the dump that were clicked along it, in order, each once a visit") {
  Site site;
  Gate west, east;
  Receiving dump;
  west.at = {0, 0};
  dump.at = {50, 20};
  east.at = {100, 0};
  site.items = {
      {{1}, "West", 0, {}, west}, {{2}, "Dump", 0, {}, dump}, {{3}, "East", 0, {}, east}, {{4}, "Bin", 0, {}, Bin{}}};
  Tool tool = tool_for(Route{});
  for (const Click click : {Click{{0, 0}, {1}}, Click{{25, 20}, {4}}, Click{{50, 20}, {2}}, Click{{50, 20}, {2}},
                            Click{{75, 20}, {}}, Click{{100, 0}, {3}}}) {
    tool = clicked(tool, site, click).tool;
  }
  const ToolStep done = finished(tool, site);
  REQUIRE(done.edits.size() == 1);
  const Item item = std::get<PutItem>(done.edits.front()).item;
  const Route* route = as<Route>(item);
  REQUIRE(route != nullptr);
  CHECK(route->stops == std::vector<ItemId>{{1}, {2}, {3}});
  CHECK(route->path.size() == 5);
  CHECK(cancelled(tool).stops.empty());
}
