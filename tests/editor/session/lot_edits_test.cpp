#include "editor/session/lot_edits.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

const Lot square = rectangular_lot(100, 100);

}  // namespace

TEST_CASE("A click near an edge means that edge, the nearest of two, and none far from all") {
  CHECK(pick_lot_edge(square, {50, 1}, 2) == 0);
  CHECK(pick_lot_edge(square, {99, 50}, 2) == 1);
  CHECK(pick_lot_edge(square, {98.5, 1}, 2) == 0);
  CHECK_FALSE(pick_lot_edge(square, {50, 50}, 2));
  CHECK_FALSE(pick_lot_edge(Lot{}, {0, 0}, 2));
}

TEST_CASE("An edge takes what lies across it and leaves the others") {
  const Lot lot = with_edge(square, 2, LotEdge::road);
  CHECK(lot.edges == std::vector{LotEdge::neighbour, LotEdge::neighbour, LotEdge::road, LotEdge::neighbour});
  CHECK(lot.corners == square.corners);
}

TEST_CASE("A dragged corner moves, the dot on an edge becomes a corner between two edges of the same kind") {
  const Lot road = with_edge(square, 1, LotEdge::road);
  CHECK(dragged(road, {Grip::corner, {100, 100}, 2}, {120, 110}).corners[2] == SitePoint{120, 110});
  const Lot more = dragged(road, {Grip::new_corner, {100, 50}, 2}, {110, 50});
  REQUIRE(more.corners.size() == 5);
  CHECK(more.corners[2] == SitePoint{110, 50});
  CHECK(more.edges ==
        std::vector{LotEdge::neighbour, LotEdge::road, LotEdge::road, LotEdge::neighbour, LotEdge::neighbour});
}

TEST_CASE("A corner dragged over the far edge stays where it was") {
  CHECK(dragged(square, {Grip::corner, {0, 0}, 0}, {150, 50}) == square);
  CHECK(dragged(square, {Grip::corner, {0, 0}, 0}, {100, 100}) == square);
}

TEST_CASE("Grips stand at every corner and on every edge, and the last edge's too") {
  const auto handles = lot_handles(square);
  REQUIRE(handles.size() == 8);
  const Lot more = dragged(square, handles.back(), {-10, 50});
  CHECK(more.corners.back() == SitePoint{-10, 50});
  CHECK(more.edges.size() == 5);
}

TEST_CASE("A triangle keeps its corners") {
  const Lot triangle = without_corner(square, 0);
  CHECK(triangle.corners.size() == 3);
  CHECK(triangle.edges.size() == 3);
  CHECK(without_corner(triangle, 0) == triangle);
}

TEST_CASE("An edge is called by the side of the lot that it is, whichever way the corners run") {
  Lot lot = rectangular_lot(200, 100);
  CHECK(side_of(lot, 0) == "south");
  CHECK(side_of(lot, 1) == "east");
  CHECK(side_of(lot, 2) == "north");
  CHECK(side_of(lot, 3) == "west");
  std::reverse(lot.corners.begin(), lot.corners.end());
  CHECK(side_of(lot, 0) == "north");
  CHECK(side_of(lot, 1) == "east");
}
