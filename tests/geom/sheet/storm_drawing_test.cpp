#include "geom/sheet/storm_drawing.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

TEST_CASE("Deeper water is darker, and a film is not drawn", "[sheet]") {
  CHECK(tint_of_depth(0.001).alpha == 0);
  CHECK(tint_of_depth(0.05).alpha > 0);
  CHECK(tint_of_depth(0.3).alpha > tint_of_depth(0.05).alpha);
  CHECK(tint_of_depth(5).alpha == tint_of_depth(0.5).alpha);
}

TEST_CASE("An arrow stands where water runs and shows where it runs to", "[sheet]") {
  const GridFrame ground{{10, 20}, 2, 4, 4};
  drain::storm::StormFrame frame{0, std::vector<std::uint16_t>(16, 0), std::vector<std::int16_t>(16, 0),
                                 std::vector<std::int16_t>(16, 0)};
  CHECK(storm_drawing(frame, ground, 2).marks.size() == 1);  // the tint alone
  const std::size_t wet = ground.offset({1, 2});
  frame.depth_mm[wet] = 100;
  frame.east_mm_per_s[wet] = 500;
  const Drawing drawing = storm_drawing(frame, ground, 2);
  REQUIRE(drawing.marks.size() == 3);
  const auto& shaft = std::get<LineMark>(drawing.marks[1]);
  CHECK(shaft.points.back().x > shaft.points.front().x);
  CHECK(shaft.points.back().y == Approx(ground.centre({1, 2}).y));
  // The picture's rows run from the north: row 2 of 4 from the south is its second.
  const auto& tint = std::get<PictureMark>(drawing.marks[0]);
  CHECK(tint.pixels.at(1, 1) >> 24 > 0);
  CHECK(tint.pixels.at(0, 0) == 0);
}
