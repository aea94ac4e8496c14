#include "editor/session/imports.hpp"

#include <catch2/catch.hpp>
#include <fstream>

#include "tests/geom/io/picture_files.hpp"

using namespace yardwright;
using namespace yardwright::session;
using tests::PictureFolder;

namespace {

/// Levels of the plane z = 100 + x / 50, in metres of the site.
void write_plane(const std::filesystem::path& file) {
  std::ofstream list{file};
  list << "x,y,z\n";
  for (int x = -40; x <= 140; x += 20) {
    for (int y = -40; y <= 140; y += 20) list << x << ',' << y << ',' << 100 + x / 50.0 << '\n';
  }
}

Session yard() {
  Site site;
  site.units = UnitSystem::metric;
  site.lot = rectangular_lot(100, 100);
  return session_of(site);
}

}  // namespace

TEST_CASE("Levels of a list become the ground as one step that can be undone") {
  const PictureFolder folder;
  write_plane(folder.path / "levels.csv");
  Session session = yard();
  GroundWords words;
  words.cell = "2m";
  words.margin = "20";
  const auto done = read_now(session, ground_reading(session, folder.path / "levels.csv", words));
  INFO((done ? "" : sentence(done.error().front())));
  REQUIRE(done);
  const LevelGrid& levels = session.site().ground.levels;
  CHECK(levels.frame().cell_m == 2);
  CHECK(levels.at(levels.frame().cell_at_offset(0)) ==
        Approx(100 + levels.frame().centre(levels.frame().cell_at_offset(0)).x / 50).margin(1e-4));
  CHECK(session.notice.find("The ground is here") == 0);
  undo(session);
  CHECK(session.site().ground.levels.empty());
}

TEST_CASE("Every field that is not understood is told, and nothing changes") {
  const PictureFolder folder;
  write_plane(folder.path / "levels.csv");
  Session session = yard();
  GroundWords words;
  words.cell = "small";
  words.epsg = "utm";
  const auto done = read_now(session, ground_reading(session, folder.path / "levels.csv", words));
  REQUIRE_FALSE(done);
  CHECK(done.error().size() == 2);
  CHECK(session.site().ground.levels.empty());
}

TEST_CASE("A file that is no ground is refused in the core's own sentence") {
  const PictureFolder folder;
  Session session = yard();
  std::ofstream{folder.path / "words.tif"} << "words";
  CHECK_FALSE(read_now(session, ground_reading(session, folder.path / "words.tif", {})));
  CHECK_FALSE(read_now(session, ground_reading(session, folder.path / "gone.csv", {})));
}

TEST_CASE("Files are offered by their endings, whatever their case") {
  CHECK(is_ground_name("a.TIF"));
  CHECK(is_ground_name("levels.csv"));
  CHECK(is_ground_name("dem.asc"));
  CHECK_FALSE(is_ground_name("home.yard"));
  CHECK_FALSE(is_ground_name("photo.png"));
}
