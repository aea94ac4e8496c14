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

namespace {

/// The 24-hour row of a NOAA Atlas 14 point export as printed (Volume 9, public domain), shortened.
void write_rain(const std::filesystem::path& file, const std::string& depths) {
  std::ofstream{file} << "Point precipitation frequency estimates (inches)\nData type: Precipitation depth\n"
                         "by duration for ARI (years):, 1,2,5,10,25,50,100\n24-hr:, "
                      << depths << "\n";
}

}  // namespace

TEST_CASE("A rain table's export becomes the storm of the yard's own years, as one step that can be undone") {
  const PictureFolder folder;
  write_rain(folder.path / "atlas14.csv", "4.01,4.76,6.09,7.28,9.05,10.5,12.1");
  Session session = yard();
  const Storm before = session.site().storm;
  Storm asked = before;
  asked.return_period_years = 50;
  perform(session, {SetStorm{asked}});
  const auto done = read_now(session, rain_reading(session, folder.path / "atlas14.csv"));
  INFO((done ? "" : sentence(done.error().front())));
  REQUIRE(done);
  const Storm& storm = session.site().storm;
  CHECK(storm.table.rows.size() == 7);
  CHECK(storm.rain_m == Approx(10.5 * 0.0254));
  CHECK(storm.two_year_rain_m == Approx(4.76 * 0.0254));
  CHECK(session.notice ==
        "The rain table is here: 7 rows, 1 to 100 years. The design storm is 267 mm, once in 50 years.");
  undo(session);
  CHECK(session.site().storm == asked);
}

TEST_CASE("A table without the row of the yard's years keeps its rain and says so") {
  const PictureFolder folder;
  write_rain(folder.path / "atlas14.csv", "4.01,4.76,6.09,7.28,9.05,10.5,12.1");
  Session session = yard();
  Storm asked = session.site().storm;
  asked.return_period_years = 30;
  perform(session, {SetStorm{asked}});
  REQUIRE(read_now(session, rain_reading(session, folder.path / "atlas14.csv")));
  CHECK(session.site().storm.rain_m == asked.rain_m);
  CHECK(session.notice.find("no row of 30 years") != std::string::npos);
}

TEST_CASE("What is no rain table is refused in a sentence, and nothing changes") {
  const PictureFolder folder;
  Session session = yard();
  const Site before = session.site();
  write_rain(folder.path / "short.csv", "4.01,4.76");
  std::ofstream{folder.path / "letter.txt"} << "Dear Sir,\n";
  for (const char* name : {"short.csv", "letter.txt", "missing.csv"}) {
    const auto done = read_now(session, rain_reading(session, folder.path / name));
    REQUIRE_FALSE(done);
    CHECK(sentence(done.error().front()).find(name) != std::string::npos);
    CHECK_FALSE(done.error().front().mend.empty());
  }
  CHECK(session.site() == before);
}
