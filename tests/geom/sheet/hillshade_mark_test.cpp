#include "geom/sheet/hillshade_mark.hpp"

#include <catch2/catch.hpp>

#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;

namespace {

std::uint32_t middle_pixel(double east_fall_ratio) {
  const GridFrame frame{{10, 20}, 2, 9, 7};
  const auto picture = hillshade_mark(scenes::levels_of(frame, [&](SitePoint at) { return -at.x * east_fall_ratio; }));
  REQUIRE(picture.has_value());
  CHECK(picture->corner.x == 10);
  CHECK(picture->corner.y == 20 + 7 * 2);
  return picture->pixels.at(4, 3);
}

}  // namespace

TEST_CASE("Level ground has no shade, ground toward the light is paled and ground away from it is browned") {
  // The light comes from the north-west: ground that falls to the west faces it.
  CHECK((middle_pixel(0) >> 24) == 0);
  CHECK((middle_pixel(-0.1) & 0xffffff) == 0xffffff);
  CHECK((middle_pixel(-0.1) >> 24) > 0);
  CHECK((middle_pixel(0.1) & 0xffffff) != 0xffffff);
  CHECK((middle_pixel(0.1) >> 24) > 0);
}

TEST_CASE("No ground has no shade") { CHECK_FALSE(hillshade_mark({}).has_value()); }
