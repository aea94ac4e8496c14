#include "geom/io/ground_file.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <random>

#include "tests/geom/io/random_site.hpp"
#include "tests/geom/io/raster_file.hpp"

using namespace yardwright;
using tests::RasterFile;

namespace {

std::filesystem::path temporary_tif() {
  return std::filesystem::temp_directory_path() /
         ("yardwright-ground-" + std::to_string(std::random_device{}()) + ".tif");
}

/// What loading a raster says, as one sentence.
std::string said_of(const RasterFile& raster, const EarthTie& tie = {}) {
  const auto path = temporary_tif();
  write(raster, path);
  const auto grid = load_level_grid(path, tie);
  std::filesystem::remove(path);
  return grid ? "" : sentence(grid.error().front());
}

using Catch::Matchers::Contains;

}  // namespace

TEST_CASE("Levels come back from their file to the last bit, with an earth tie or without", "[io]") {
  constexpr unsigned seed = 20261128;
  CAPTURE(seed);
  std::mt19937 random{seed};
  const auto path = temporary_tif();
  // 26915 is UTM zone 15 north in metres, 2274 a state plane in US survey feet.
  for (const EarthTie& tie : {EarthTie{}, EarthTie{26915, 451234.5, 4649876.25}, EarthTie{2274, 600000.1, 200000.7}}) {
    for (int i = 0; i < 10; ++i) {
      const LevelGrid grid = tests::random_levels(random);
      REQUIRE(save_level_grid(grid, tie, path).has_value());
      const auto again = load_level_grid(path, tie);
      if (!again) FAIL(sentence(again.error().front()));
      REQUIRE(*again == grid);
    }
  }
  std::filesystem::remove(path);
}

TEST_CASE("A raster made elsewhere lies where it says: its top left corner, rows going south", "[io]") {
  RasterFile raster;  // 3 x 2 cells of 2 m, the top left corner at (10, 104)
  raster.levels = {1, 2, 3, 4, 5, 6};
  const auto path = temporary_tif();
  write(raster, path);
  const auto grid = load_level_grid(path, {});
  std::filesystem::remove(path);
  REQUIRE(grid.has_value());
  CHECK(grid->frame() == GridFrame{{10, 100}, 2, 3, 2});
  CHECK(grid->at({0, 1}) == 1);
  CHECK(grid->at({2, 0}) == 6);
}

TEST_CASE("Cells without a level are refused and counted", "[io]") {
  RasterFile raster;
  raster.levels = {1, -9999, 3, 4, -9999, 6};
  CHECK_THAT(said_of(raster), Contains("2 of its 6 cells have no level"));
  raster.levels = {1, 2, 3, 4, std::numeric_limits<float>::quiet_NaN(), 6};
  CHECK_THAT(said_of(raster), Contains("1 of its 6 cells"));
  raster.levels = {1, 2, 3, 4, 5, 6};
  raster.nodata = 5;
  CHECK_THAT(said_of(raster), Contains("1 of its 6 cells"));
}

TEST_CASE("A raster that is turned, stretched, of many bands or of another system is refused", "[io]") {
  RasterFile turned;
  turned.transform = {10, 2, 0.5, 104, 0.5, -2};
  CHECK_THAT(said_of(turned), Contains("not square with north up"));
  RasterFile stretched;
  stretched.transform = {10, 2, 0, 104, 0, -3};
  CHECK_THAT(said_of(stretched), Contains("not square with north up"));
  RasterFile colours;
  colours.bands = 3;
  CHECK_THAT(said_of(colours), Contains("has 3 bands"));
  RasterFile projected;
  projected.epsg = 26915;
  CHECK_THAT(said_of(projected), Contains("is in EPSG 26915, the site's tie is EPSG 0"));
  CHECK_THAT(said_of(projected, {26916, 0, 0}), Contains("tie is EPSG 26916"));
  CHECK(said_of(projected, {26915, 0, 0}).empty());
  RasterFile degrees;
  degrees.epsg = 4326;
  CHECK_THAT(said_of(degrees, {26915, 0, 0}), Contains("is in EPSG 4326"));
}

TEST_CASE("A tie that is no projected system, and a file that is no raster, are refused", "[io]") {
  std::mt19937 random{3};
  const auto path = temporary_tif();
  const LevelGrid grid = tests::random_levels(random);
  CHECK_FALSE(save_level_grid(grid, {4326, 0, 0}, path).has_value());
  CHECK_FALSE(save_level_grid(grid, {999999, 0, 0}, path).has_value());
  CHECK_FALSE(save_level_grid({}, {}, path).has_value());
  const auto missing = load_level_grid(path, {});
  REQUIRE_FALSE(missing.has_value());
  CHECK_THAT(sentence(missing.error().front()), Contains("is not there"));
  std::ofstream{path} << "no raster";
  const auto garbled = load_level_grid(path, {});
  REQUIRE_FALSE(garbled.has_value());
  CHECK_THAT(sentence(garbled.error().front()), Contains("is no GeoTIFF"));
  std::filesystem::remove(path);
}
