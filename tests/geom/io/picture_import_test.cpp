#include "geom/io/picture_import.hpp"

#include <catch2/catch.hpp>

#include "geom/site/picture_fit.hpp"
#include "tests/geom/io/picture_files.hpp"

using namespace yardwright;
using namespace yardwright::tests;

namespace {

Site lot_of(double length_m, double width_m) {
  Site site;
  site.lot = rectangular_lot(length_m, width_m);
  return site;
}

ImportedPicture imported(const PictureFolder& folder, const char* name, const Site& site) {
  const auto out = import_picture(folder.path / name, folder.path / "home.yard", site);
  INFO((out ? "" : sentence(out.error().front())));
  REQUIRE(out);
  return *out;
}

}  // namespace

TEST_CASE("A picture without coordinates lies on the lot's middle, as wide as the lot, to be fitted") {
  const PictureFolder folder;
  write(plain_picture(40, 20, 1, 2, 3), "PNG", folder.path / "sky.png");
  const ImportedPicture out = imported(folder, "sky.png", lot_of(200, 100));
  CHECK(out.placing == PicturePlacing::on_lot);
  CHECK(out.picture.file == "sky.png");
  CHECK(out.picture.width_m == 200);
  CHECK(height_m(out.picture) == Approx(100));
  CHECK(distance(out.picture.at, {100, 50}) < 1e-9);
}

TEST_CASE("A GeoTIFF lies where its coordinates say once the site is tied to the earth") {
  const PictureFolder folder;
  PictureBytes picture = plain_picture(40, 20, 1, 2, 3);
  picture.transform = {429000, 0.5, 0, 5150400, 0, -0.5};
  picture.epsg = 26915;
  write(picture, "GTiff", folder.path / "sky.tif");
  Site site = lot_of(200, 100);
  CHECK(imported(folder, "sky.tif", site).placing == PicturePlacing::by_size);
  CHECK(imported(folder, "sky.tif", site).picture.width_m == Approx(20));
  site.tie = {26915, 429000, 5150380};
  const ImportedPicture out = imported(folder, "sky.tif", site);
  CHECK(out.placing == PicturePlacing::by_coordinates);
  CHECK(distance(place_in_picture(out.picture, 0, 0), {0, 20}) < 1e-6);
  CHECK(distance(place_in_picture(out.picture, 1, 1), {20, 10}) < 1e-6);
}

// Meridian convergence of UTM: tan(c) = tan(longitude - central meridian) sin(latitude) (Snyder, Map Projections: A Working Manual,
// USGS Professional Paper 1395, 1987, on the sphere; from memory). One degree east of zone 15's central meridian, at 46 north, grid
// north lies 0.72 degrees clockwise of true north; what is upright in degrees therefore leans 0.72 degrees counter-clockwise on the grid.
TEST_CASE("A picture in degrees is turned by the meridian's convergence") {
  const PictureFolder folder;
  PictureBytes picture = plain_picture(40, 20, 1, 2, 3);
  picture.transform = {-92.0, 0.00001, 0, 46.0, 0, -0.00001};
  picture.epsg = 4326;
  write(picture, "GTiff", folder.path / "degrees.tif");
  Site site = lot_of(200, 100);
  site.tie = {32615, 577000, 5094000};
  const ImportedPicture out = imported(folder, "degrees.tif", site);
  CHECK(out.placing == PicturePlacing::by_coordinates);
  CHECK(between(out.picture.facing, Bearing::degrees(360 - 0.7194)).as_degrees() < 0.01);
  // A ten-thousandth of a degree of latitude is 11.11 m on the meridian (10,001,966 m from equator to pole, WGS 84).
  CHECK(height_m(out.picture) == Approx(0.0002 * 10'001'966 / 90).epsilon(0.002));
}

TEST_CASE("A file that is no picture brings nothing beside the site") {
  const PictureFolder folder;
  CHECK_FALSE(import_picture(folder.path / "gone.png", folder.path / "home.yard", {}));
}
