#include "geom/sheet/site_pictures.hpp"

#include <catch2/catch.hpp>

#include "geom/io/picture_file.hpp"
#include "geom/io/picture_import.hpp"
#include "geom/io/site_file.hpp"
#include "geom/io/whole_file.hpp"
#include "geom/sheet/cairo_device.hpp"
#include "geom/sheet/plan_sheet.hpp"
#include "geom/site/edit.hpp"
#include "geom/site/picture_fit.hpp"
#include "tests/geom/io/picture_files.hpp"

using namespace yardwright;
using namespace yardwright::tests;

namespace {

/// White, with a red and a blue square whose middles are at (100, 200) and (300, 50) of 400 x 300 pixels.
PictureBytes two_marks() {
  PictureBytes picture = plain_picture(400, 300, 255, 255, 255);
  const auto paint = [&](int column, int row, std::size_t band, std::uint8_t value) {
    picture.bytes[band * 400 * 300 + static_cast<std::size_t>(row) * 400 + static_cast<std::size_t>(column)] = value;
  };
  for (int down = -10; down < 10; ++down) {
    for (int right = -10; right < 10; ++right) {
      for (const std::size_t band : {1, 2}) paint(100 + right, 200 + down, band, 0);
      for (const std::size_t band : {0, 1}) paint(300 + right, 50 + down, band, 0);
    }
  }
  return picture;
}

/// The site's picture fitted so that the marks lie at two places: it comes out turned.
Site fitted_site(const PictureFolder& folder, const PointPair& places) {
  write(two_marks(), "PNG", folder.path / "marks.png");
  Site site;
  site.lot = rectangular_lot(100, 80);
  Picture picture = import_picture(folder.path / "marks.png", folder.path / "home.yard", site)->picture;
  const PointPair seen{place_in_picture(picture, 100 / 400.0, 200 / 300.0),
                       place_in_picture(picture, 300 / 400.0, 50 / 300.0)};
  picture = *fitted(picture, seen, places);
  picture.strength_ratio = 1;
  return apply(site, PutItem{{next_id(site), "sky", 0, {}, picture}});
}

/// The colour of a page's PNG at a place of the site.
std::uint32_t colour_at(const Pixels& png, const Page& page, const Placement& placement, SitePoint at) {
  const double per_mm = png.width_px() / page.width_mm;
  return png.at(static_cast<int>((placement.origin_x + at.x * placement.per_unit) * per_mm),
                static_cast<int>((placement.origin_y - at.y * placement.per_unit) * per_mm));
}

bool is_red(std::uint32_t colour) {
  return (colour & 0xFFU) > 200 && ((colour >> 8U) & 0xFFU) < 60 && ((colour >> 16U) & 0xFFU) < 60;
}
bool is_blue(std::uint32_t colour) {
  return (colour & 0xFFU) < 60 && ((colour >> 8U) & 0xFFU) < 60 && ((colour >> 16U) & 0xFFU) > 200;
}

}  // namespace

TEST_CASE("A fitted picture lands turned and in its place in a rendering, after the site was saved and opened") {
  const PictureFolder folder;
  const PointPair places{{30, 25}, {45, 60}};
  const auto file = folder.path / "home.yard";
  REQUIRE(save_site(fitted_site(folder, places), file));
  const auto site = load_site(file);
  REQUIRE(site);
  SitePictures read = read_site_pictures(*site, file);
  REQUIRE(read.problems.empty());
  const Page page = plan_picture(*site, {design_surface(*site)}, {}, std::move(read.pictures));
  const auto png = png_of(page, 100);
  REQUIRE(png);
  REQUIRE(write_whole_file(folder.path / "plan.png", *png));
  const auto pixels = read_pixels(folder.path / "plan.png");
  REQUIRE(pixels);
  const Placement placement = page.drawings.front().placement;
  CHECK(is_red(colour_at(*pixels, page, placement, places.a)));
  CHECK(is_blue(colour_at(*pixels, page, placement, places.b)));
  CHECK_FALSE(is_red(colour_at(*pixels, page, placement, places.b)));
  CHECK_FALSE(is_blue(colour_at(*pixels, page, placement, {45, 25})));
}

TEST_CASE("A picture lies under everything else that is drawn") {
  const PictureFolder folder;
  Site site = fitted_site(folder, {{30, 25}, {45, 60}});
  Bin bin;
  bin.at = {30, 25};
  site = apply(site, PutItem{{next_id(site), "", 0, {}, bin}});
  PlanStyle style;
  style.pictures = read_site_pictures(site, folder.path / "home.yard").pictures;
  const Drawing drawing = plan_drawing(site, design_surface(site), style);
  REQUIRE(drawing.marks.size() > 2);
  CHECK(std::holds_alternative<PictureMark>(drawing.marks.front()));
}

TEST_CASE("A picture that is gone leaves its frame and a problem that names it") {
  const PictureFolder folder;
  const Site site = fitted_site(folder, {{30, 25}, {45, 60}});
  std::filesystem::remove(folder.path / "marks.png");
  const SitePictures read = read_site_pictures(site, folder.path / "home.yard");
  CHECK(read.pictures.empty());
  REQUIRE(read.problems.size() == 1);
  CHECK(read.problems.front().where == "marks.png");
}

TEST_CASE("A link out of the site's folder is not followed") {
  const PictureFolder folder, elsewhere;
  const Site site = fitted_site(folder, {{30, 25}, {45, 60}});
  std::filesystem::rename(folder.path / "marks.png", elsewhere.path / "marks.png");
  std::filesystem::create_symlink(elsewhere.path / "marks.png", folder.path / "marks.png");
  CHECK(read_site_pictures(site, folder.path / "home.yard").problems.size() == 1);
}

TEST_CASE("A picture larger than the lot does not make the plan smaller") {
  const PictureFolder folder;
  const Site site = fitted_site(folder, {{-500, -500}, {900, 900}});
  CHECK(extent_of(site).high.x == Approx(100));
}
