#include "geom/io/picture_file.hpp"

#include <catch2/catch.hpp>
#include <fstream>

#include "tests/geom/io/picture_files.hpp"
#include "tests/geom/io/raster_file.hpp"

using namespace yardwright;
using namespace yardwright::tests;

namespace {

constexpr std::uint32_t rgb(std::uint32_t red, std::uint32_t green, std::uint32_t blue, std::uint32_t alpha = 255) {
  return alpha << 24U | blue << 16U | green << 8U | red;
}

std::string why_refused(const std::filesystem::path& file) {
  const auto read = read_pixels(file);
  return read ? "" : sentence(read.error().front());
}

}  // namespace

TEST_CASE("A PNG's pixels come back, row by row from the top") {
  const PictureFolder folder;
  write({2, 2, 3, {255, 0, 0, 10, 0, 255, 0, 20, 0, 0, 255, 30}}, "PNG", folder.path / "a.png");
  const auto read = read_pixels(folder.path / "a.png");
  REQUIRE(read);
  CHECK(read->width_px() == 2);
  CHECK(read->at(0, 0) == rgb(255, 0, 0));
  CHECK(read->at(1, 0) == rgb(0, 255, 0));
  CHECK(read->at(0, 1) == rgb(0, 0, 255));
  CHECK(read->at(1, 1) == rgb(10, 20, 30));
}

TEST_CASE("Grey, and what is clear, are kept as they are") {
  const PictureFolder folder;
  write({2, 1, 1, {7, 200}}, "PNG", folder.path / "grey.png");
  write({2, 1, 4, {9, 9, 8, 8, 7, 7, 255, 0}}, "PNG", folder.path / "clear.png");
  const auto grey = read_pixels(folder.path / "grey.png"), clear = read_pixels(folder.path / "clear.png");
  REQUIRE(grey);
  REQUIRE(clear);
  CHECK(grey->at(0, 0) == rgb(7, 7, 7));
  CHECK(grey->at(1, 0) == rgb(200, 200, 200));
  CHECK(clear->at(0, 0) == rgb(9, 8, 7));
  CHECK(clear->at(1, 0) == rgb(9, 8, 7, 0));
}

TEST_CASE("A JPEG and a GeoTIFF are read within what their packing loses") {
  const PictureFolder folder;
  const PictureBytes plain = plain_picture(16, 16, 200, 100, 50);
  write(plain, "JPEG", folder.path / "a.jpg");
  write(plain, "GTiff", folder.path / "a.tif");
  const auto jpeg = read_pixels(folder.path / "a.jpg"), tiff = read_pixels(folder.path / "a.tif");
  REQUIRE(jpeg);
  REQUIRE(tiff);
  CHECK(tiff->at(8, 8) == rgb(200, 100, 50));
  for (const unsigned shift : {0U, 8U, 16U}) {
    const auto part = [shift](std::uint32_t colour) { return static_cast<int>((colour >> shift) & 0xFFU); };
    CHECK(std::abs(part(jpeg->at(8, 8)) - part(rgb(200, 100, 50))) <= 3);
  }
}

TEST_CASE("A large picture is averaged down to what a graphics card takes, in its own proportion") {
  const PictureFolder folder;
  PictureBytes stripes{8192, 16, 1, {}};
  for (int i = 0; i < 8192 * 16; ++i) stripes.bytes.push_back(i % 2 == 0 ? 0 : 200);
  write(stripes, "PNG", folder.path / "wide.png");
  const auto read = read_pixels(folder.path / "wide.png");
  REQUIRE(read);
  CHECK(read->width_px() == longest_picture_side_px);
  CHECK(read->height_px() == 8);
  CHECK(read->at(2000, 4) == rgb(100, 100, 100));
}

TEST_CASE("What is no picture is refused in a sentence that says what to do") {
  const PictureFolder folder;
  std::ofstream{folder.path / "words.png"} << "not a picture";
  std::ofstream{folder.path / "empty.jpg"};
  write(RasterFile{}, folder.path / "levels.tif");
  CHECK(why_refused(folder.path / "words.png") ==
        "words.png: is no picture that can be read; give a PNG, a JPEG or a GeoTIFF");
  CHECK(why_refused(folder.path / "empty.jpg").find("no picture") != std::string::npos);
  CHECK(why_refused(folder.path / "gone.png").find("no file") != std::string::npos);
  CHECK(why_refused(folder.path).find("no file") != std::string::npos);
  CHECK(why_refused(folder.path / "levels.tif").find("measured numbers") != std::string::npos);
}

TEST_CASE("A picture that breaks off is refused") {
  const PictureFolder folder;
  write(plain_picture(64, 64, 1, 2, 3), "GTiff", folder.path / "whole.tif");
  std::filesystem::resize_file(folder.path / "whole.tif", 4000);
  CHECK_FALSE(why_refused(folder.path / "whole.tif").empty());
}

TEST_CASE("A picture is copied beside the site file, and never over another one") {
  const PictureFolder folder;
  std::filesystem::create_directories(folder.path / "camera");
  const auto site = folder.path / "home.yard", camera = folder.path / "camera";
  write(plain_picture(4, 4, 1, 2, 3), "PNG", camera / "sky.png");
  CHECK(bring_beside(camera / "sky.png", site).value_or(FileBeside{}).name == "sky.png");
  CHECK(bring_beside(camera / "sky.png", site).value_or(FileBeside{}).name == "sky.png");
  CHECK(bring_beside(folder.path / "sky.png", site).value_or(FileBeside{}).name == "sky.png");
  write(plain_picture(4, 4, 9, 9, 9), "PNG", camera / "sky.png");
  CHECK(bring_beside(camera / "sky.png", site).value_or(FileBeside{}).name == "sky-2.png");
  CHECK(read_pixels(folder.path / "sky.png")->at(0, 0) == rgb(1, 2, 3));
  CHECK(read_pixels(folder.path / "sky-2.png")->at(0, 0) == rgb(9, 9, 9));
  CHECK_FALSE(bring_beside(camera / "gone.png", site));
}
