#include "editor/canvas/pointer.hpp"

#include <catch2/catch.hpp>

#include "tests/editor/canvas/hand.hpp"

using namespace yardwright;
using namespace yardwright::session;
using tests::Hand;

namespace {

constexpr ItemId bin_id{1}, shed_id{2}, pad_id{3};

/// A lot 100 m square with a bin, a shed and a pad under both.
Site small_yard() {
  Site site;
  site.units = UnitSystem::metric;
  site.lot = rectangular_lot(100, 100);
  Bin bin;
  bin.at = {30, 50};
  bin.diameter_m = 10;
  Building shed;
  shed.at = {70, 50};
  shed.length_m = 20;
  shed.width_m = 10;
  Pad pad;
  pad.outline = {{10, 30}, {90, 30}, {90, 70}, {10, 70}};
  site.items = {{bin_id, "Bin", 0, {}, bin}, {shed_id, "Shed", 0, {}, shed}, {pad_id, "Pad", 0, {}, pad}};
  return site;
}

const Bin& bin_of(const Hand& hand) { return std::get<Bin>(find(hand.session.site(), bin_id)->thing); }
const Building& shed_of(const Hand& hand) { return std::get<Building>(find(hand.session.site(), shed_id)->thing); }

}  // namespace

TEST_CASE("A click selects what is under it, one on nothing selects nothing") {
  Hand hand{small_yard()};
  hand.click({31, 51});
  CHECK(hand.session.selection == Selection{bin_id});
  hand.click({5, 90});
  CHECK(hand.session.selection.empty());
}

TEST_CASE("With Shift a click adds, and takes out again") {
  Hand hand{small_yard()};
  hand.click({30, 50});
  hand.hold_shift(true);
  hand.click({70, 50});
  CHECK(hand.session.selection == Selection{bin_id, shed_id});
  hand.click({30, 50});
  CHECK(hand.session.selection == Selection{shed_id});
}

TEST_CASE("A drag moves a bin as one step, and a trembling hand moves nothing") {
  Hand hand{small_yard()};
  const Site before = hand.session.site();
  hand.drag({30, 50}, {40, 60});
  CHECK(distance(bin_of(hand).at, {40, 60}) < 0.8);  // the grid may draw it by half a step
  undo(hand.session);
  CHECK(hand.session.site() == before);
  hand.drag({30, 50}, {30.4, 50});
  CHECK(hand.session.site() == before);
}

TEST_CASE("A drag that is dropped leaves the yard as it was") {
  Hand hand{small_yard()};
  const Site before = hand.session.site();
  hand.move({30, 50});
  hand.press();
  hand.move({45, 60});
  CHECK_FALSE(hand.session.site() == before);
  canvas::drop_drag(hand.pointer, hand.session);
  CHECK(hand.session.site() == before);
  CHECK_FALSE(hand.session.history.can_undo());
}

TEST_CASE("A drag over a pad draws a box, a click on it selects it, and then it can be dragged") {
  Hand hand{small_yard()};
  hand.drag({15, 35}, {85, 65});
  CHECK(hand.session.selection == Selection{bin_id, shed_id});
  hand.click({50, 35});
  CHECK(hand.session.selection == Selection{pad_id});
  const Site before = hand.session.site();
  hand.drag({50, 40}, {60, 40});
  CHECK_FALSE(hand.session.site() == before);
}

TEST_CASE("The round grip turns a shed by whole degrees, by fifteens with Shift, freely with Alt") {
  Hand hand{small_yard()};
  const auto turn_to = [&](SitePoint to) {
    hand.click({70, 50});
    for (const Handle& handle : canvas::shown_handles(hand.session, hand.view, hand.look)) {
      if (handle.grip == Grip::turn) return hand.drag(handle.at, to);
    }
    FAIL("there is no grip to turn by");
  };
  turn_to({90, 50.4});
  CHECK(shed_of(hand).facing.as_degrees() == Approx(89));
  turn_to({70, 30});
  CHECK(shed_of(hand).facing.as_degrees() == Approx(180));
  undo(hand.session);
  undo(hand.session);
  hand.click({5, 90});
  hand.click({70, 50});
  const auto handles = canvas::shown_handles(hand.session, hand.view, hand.look);
  const auto grip = std::ranges::find(handles, Grip::turn, &Handle::grip);
  REQUIRE(grip != handles.end());
  hand.hold_alt(true);
  hand.drag(grip->at, {90, 50.4});
  CHECK(shed_of(hand).facing.as_degrees() == Approx(bearing_of(SiteVector{20, 0.4}).as_degrees()).margin(0.5));
  CHECK(shed_of(hand).facing.as_degrees() != Approx(89));
}

TEST_CASE("A side's grip makes a shed longer while its far side stays") {
  Hand hand{small_yard()};
  hand.click({70, 50});
  const double far_side = shed_of(hand).at.y - shed_of(hand).length_m / 2;
  hand.drag({70, 60}, {70, 66});
  CHECK(shed_of(hand).length_m == Approx(26).margin(0.6));
  CHECK(shed_of(hand).at.y - shed_of(hand).length_m / 2 == Approx(far_side));
}

TEST_CASE("A click on the lot's edge selects it, and its corner can then be dragged and taken back") {
  Hand hand{small_yard()};
  hand.click({50, 100});
  CHECK(selected_lot_edge(hand.session) == 2);
  hand.drag({100, 100}, {110, 104});
  CHECK(distance(hand.session.site().lot.corners[2], {110, 104}) < 0.8);
  CHECK(selected_lot_edge(hand.session) == 2);
  undo(hand.session);
  CHECK(hand.session.site().lot == small_yard().lot);
}

TEST_CASE("The wheel zooms about the place under the pointer") {
  Hand hand{small_yard()};
  const ScreenPoint before = to_screen(hand.view, {30, 60});
  hand.wheel({30, 60}, 2);
  CHECK(hand.view.px_per_m > 4);
  CHECK(distance(to_screen(hand.view, {30, 60}), before) < 0.5);
}

TEST_CASE("A picture's points are clicked where they are, without the grid and the corners drawing them") {
  Site site = small_yard();
  Picture picture;
  picture.at = {50, 50};
  site.items.push_back({{9}, "sky", 0, {}, picture});
  Hand hand{site};
  take_tool(hand.session, fit_tool({9}));
  hand.click({30.31, 50.27});
  REQUIRE(hand.session.tool.points.size() == 1);
  CHECK(distance(hand.session.tool.points.front(), {30.31, 50.27}) < 0.3);  // half a pixel
  CHECK_FALSE(hand.session.tool.points.front() == SitePoint{30, 50});
}

TEST_CASE("A thing that is small on the screen is moved by a drag, since it shows no handles to size it by") {
  Site site;
  site.items.push_back({{1}, "Bin 1", 0, {}, Bin{.at = {50, 50}, .diameter_m = 10}});
  Hand hand{site};
  hand.view.px_per_m = 2;
  select(hand.session, {1});
  for (const Handle& handle : canvas::shown_handles(hand.session, hand.view, hand.look))
    CHECK(handle.grip == Grip::turn);
  hand.drag({54, 50}, {74, 50});
  const Bin& bin = std::get<Bin>(hand.session.site().items[0].thing);
  CHECK(bin.diameter_m == 10);
  CHECK(bin.at.x > 65);
  hand.view.px_per_m = 10;
  CHECK(canvas::shown_handles(hand.session, hand.view, hand.look).size() > 1);
}
