#include "geom/io/ground_import.hpp"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <random>

using namespace yardwright;

namespace {

constexpr double same_plane_m = 0.002;  // bilinear keeps a plane; this is for floats and the approximate transform

struct Folder {
  std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("ground-import-" + std::to_string(std::random_device{}()));
  Folder() { std::filesystem::create_directories(path); }
  ~Folder() { std::filesystem::remove_all(path); }
};

/// A raster of `level_of(x, y)`, x and y in the file's own coordinates.
struct TestRaster {
  int epsg = 26915;
  double west = 429000, north = 5150400, cell = 1;
  int columns = 300, rows = 300;
  const char* vertical = "";
  double no_data = -9999;
};

template <class LevelOf>
void write(const std::filesystem::path& path, const TestRaster& raster, LevelOf level_of) {
  GDALAllRegister();
  auto* file = GetGDALDriverManager()->GetDriverByName("GTiff")->Create(path.c_str(), raster.columns, raster.rows, 1,
                                                                        GDT_Float32, nullptr);
  REQUIRE(file != nullptr);
  std::array<double, 6> pixels{raster.west, raster.cell, 0, raster.north, 0, -raster.cell};
  file->SetGeoTransform(pixels.data());
  OGRSpatialReference system;
  if (raster.epsg != 0) system.importFromEPSG(raster.epsg), file->SetSpatialRef(&system);
  GDALRasterBand* band = file->GetRasterBand(1);
  band->SetNoDataValue(raster.no_data);
  band->SetUnitType(raster.vertical);
  std::vector<float> row(static_cast<std::size_t>(raster.columns));
  for (int r = 0; r < raster.rows; ++r) {
    for (int c = 0; c < raster.columns; ++c)
      row[static_cast<std::size_t>(c)] =
          static_cast<float>(level_of(raster.west + (c + 0.5) * raster.cell, raster.north - (r + 0.5) * raster.cell));
    REQUIRE(band->RasterIO(GF_Write, 0, r, raster.columns, 1, row.data(), raster.columns, 1, GDT_Float32, 0, 0,
                           nullptr) == CE_None);
  }
  GDALClose(file);
}

ImportedGround imported(const std::filesystem::path& path, const Site& site = {}, const ImportOptions& options = {}) {
  const auto out = import_ground(path, site, options);
  INFO((out ? "" : sentence(out.error().front())));
  REQUIRE(out.has_value());
  return *out;
}

/// Every cell's level against `level_of(easting, northing)` in the tie's system.
template <class LevelOf>
void check_levels(const ImportedGround& read, LevelOf level_of, double within_m) {
  const GridFrame& frame = read.ground.levels.frame();
  double worst_m = 0;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    const SitePoint at = frame.centre(frame.cell_at_offset(i));
    worst_m = std::max(worst_m, std::abs(read.ground.levels.values()[i] -
                                         level_of(read.tie.easting_m + at.x, read.tie.northing_m + at.y)));
  }
  CHECK(worst_m < within_m);
}

bool any_note_says(const ImportedGround& read, std::string_view words) {
  return std::ranges::any_of(read.notes,
                             [&](const std::string& note) { return note.find(words) != std::string::npos; });
}

double metric_plane(double x, double y) { return 300 + 0.02 * (x - 429000) + 0.01 * (y - 5150000); }

/// Points of one coordinate system in another.
class Moved {
 public:
  Moved(int from_epsg, int to_epsg) {
    OGRSpatialReference from, to;
    from.importFromEPSG(from_epsg), to.importFromEPSG(to_epsg);
    from.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER), to.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
    way_.reset(OGRCreateCoordinateTransformation(&from, &to));
    REQUIRE(way_ != nullptr);
  }
  SitePoint operator()(double x, double y) const {
    REQUIRE(way_->Transform(1, &x, &y));
    return {x, y};
  }

 private:
  std::unique_ptr<OGRCoordinateTransformation> way_;
};

}  // namespace

TEST_CASE("A plane in UTM metres comes back as the same plane, cell on cell") {
  const Folder folder;
  write(folder.path / "utm.tif", {}, metric_plane);
  const ImportedGround read = imported(folder.path / "utm.tif");
  CHECK(read.tie == EarthTie{26915, 429000, 5150100});
  CHECK(read.ground.levels.frame() == GridFrame{{0, 0}, 1, 300, 300});
  CHECK(any_note_says(read, "taken as metres"));
  check_levels(read, metric_plane, same_plane_m);
}

TEST_CASE("A geographic raster is brought into its UTM zone as the same ground") {
  const Folder folder;
  const auto in_degrees = [](double longitude, double latitude) {
    return 300 + 2000 * (longitude + 93.92) + 1000 * (latitude - 46.5);
  };
  write(folder.path / "degrees.tif", {4326, -93.925, 46.505, 0.00002, 400, 300}, in_degrees);
  const ImportedGround read = imported(folder.path / "degrees.tif", {}, {.cell_m = 2});
  CHECK(read.tie.epsg == 32615);
  const Moved to_degrees{32615, 4326};
  const auto expected = [&](double east, double north) {
    const SitePoint at = to_degrees(east, north);
    return in_degrees(at.x, at.y);
  };
  check_levels(read, expected, 0.005);
}

TEST_CASE("A state plane in feet asks for the levels' unit, and takes it from the band where it is said") {
  const Folder folder;
  // EPSG 3441: NAD83 / Arkansas North, US survey feet.
  const auto in_feet = [](double x, double y) { return 250 + 0.02 * (x - 1240000) + 0.01 * (y - 300000); };
  TestRaster raster{3441, 1240000, 301000, 3, 330, 330};
  write(folder.path / "mute.tif", raster, in_feet);
  const auto mute = import_ground(folder.path / "mute.tif", {});
  REQUIRE_FALSE(mute.has_value());
  CHECK(mute.error().front().mend.find("--vertical-unit") != std::string::npos);
  raster.vertical = "US survey foot";
  write(folder.path / "said.tif", raster, in_feet);
  const ImportedGround read = imported(folder.path / "said.tif");
  CHECK(read.tie.epsg == 26915);
  const Moved to_feet{26915, 3441};
  const auto expected = [&](double east, double north) {
    const SitePoint at = to_feet(east, north);
    return in_feet(at.x, at.y) * 1200 / 3937;
  };
  check_levels(read, expected, 0.005);
  const ImportedGround asked = imported(folder.path / "mute.tif", {}, {.vertical_unit = MapUnit::us_survey_foot});
  CHECK(asked.ground.levels == read.ground.levels);
}

TEST_CASE("The ground covers the lot and its margin, centred on the lot of a site that is not tied") {
  const Folder folder;
  write(folder.path / "utm.tif", {}, metric_plane);
  Site site;
  site.lot = rectangular_lot(100, 80);
  const ImportedGround read = imported(folder.path / "utm.tif", site, {.margin_m = 30});
  CHECK(read.tie == EarthTie{26915, 429100, 5150210});
  CHECK(read.ground.levels.frame() == GridFrame{{-30, -30}, 1, 160, 140});
  CHECK(any_note_says(read, "lot's centre"));
  check_levels(read, metric_plane, same_plane_m);
  site.tie = read.tie;
  CHECK(imported(folder.path / "utm.tif", site, {.margin_m = 30}).ground.levels == read.ground.levels);
  site.tie.easting_m += 250;
  CHECK_FALSE(import_ground(folder.path / "utm.tif", site).has_value());
}

TEST_CASE("Holes are refused with their number and place, and filled when asked") {
  const Folder folder;
  const auto with_hole = [](double x, double y) {
    return x > 429100 && x < 429110 && y > 5150200 && y < 5150206 ? -9999.0 : metric_plane(x, y);
  };
  write(folder.path / "hole.tif", {}, with_hole);
  const auto refused_one = import_ground(folder.path / "hole.tif", {});
  REQUIRE_FALSE(refused_one.has_value());
  CHECK(refused_one.error().front().what.starts_with("60 of 90000 cells have no level, between 10"));
  const ImportedGround read = imported(folder.path / "hole.tif", {}, {.fill_holes = true});
  CHECK(read.filled_cells == 60);
  check_levels(read, metric_plane, 0.2);
  TestRaster unnamed;
  unnamed.no_data = 12345;  // so that -9999 is not named as missing
  write(folder.path / "unnamed.tif", unnamed, with_hole);
  CHECK_FALSE(import_ground(folder.path / "unnamed.tif", {}).has_value());
}

TEST_CASE("An ESRI ASCII grid without coordinate system asks for it") {
  const Folder folder;
  std::ofstream{folder.path / "ground.asc"}
      << "ncols 3\nnrows 2\nxllcorner 429000\nyllcorner 5150000\ncellsize 10\n1 2 3\n4 5 6\n";
  const auto mute = import_ground(folder.path / "ground.asc", {}, {.cell_m = 10});
  REQUIRE_FALSE(mute.has_value());
  CHECK(mute.error().front().mend.find("--epsg") != std::string::npos);
  const ImportedGround read = imported(folder.path / "ground.asc", {}, {.cell_m = 10, .epsg = 26915});
  CHECK(read.ground.levels.values() == std::vector<float>{4, 5, 6, 1, 2, 3});
}

TEST_CASE("Spot levels of a plane come back as the plane") {
  const Folder folder;
  std::ofstream list{folder.path / "spots.csv"};
  list.precision(12);
  list << "x,y,z\n";
  const auto plane = [](double x, double y) { return 100 + 0.03 * x - 0.02 * y; };
  std::mt19937 random{42};
  std::uniform_real_distribution<double> place{0, 60};
  const auto put = [&](double x, double y) { list << x << "," << y << "," << plane(x, y) << "\n"; };
  for (const SitePoint corner : {SitePoint{0, 0}, {60, 0}, {60, 60}, {0, 60}}) put(corner.x, corner.y);
  for (int i = 0; i < 200; ++i) put(place(random), place(random));
  list.close();
  const ImportedGround read = imported(folder.path / "spots.csv", {}, {.plan_unit = MapUnit::metre});
  CHECK(read.ground.levels.frame() == GridFrame{{0, 0}, 1, 60, 60});
  check_levels(read, plane, same_plane_m);
  const ImportedGround feet = imported(folder.path / "spots.csv", {}, {.plan_unit = MapUnit::foot});
  check_levels(
      feet, [&](double x, double y) { return 0.3048 * plane(x / 0.3048, y / 0.3048); }, same_plane_m);
}

TEST_CASE("New levels leave the groundwater and the earth of the yard as they were told") {
  const Folder folder;
  const auto path = folder.path / "plane.csv";
  std::ofstream{path} << "x,y,z\n0,0,100\n50,0,101\n0,50,102\n50,50,103\n";
  Site site;
  site.lot = rectangular_lot(50, 50);
  site.ground.file = "before.tif";
  site.ground.groundwater_depth_m = 1.5;
  site.ground.shrink_ratio = 0.15;
  site.ground.swell_ratio = 0.25;
  ImportOptions options{.vertical_unit = MapUnit::metre, .plan_unit = MapUnit::metre};
  options.margin_m = 0;
  const Ground read = imported(path, site, options).ground;
  CHECK_FALSE(read.levels.empty());
  CHECK(read.file.empty());
  CHECK(read.groundwater_depth_m == 1.5);
  CHECK(read.shrink_ratio == 0.15);
  CHECK(read.swell_ratio == 0.25);
}

TEST_CASE("Spot levels that span nothing or contradict each other are refused") {
  const Folder folder;
  std::ofstream{folder.path / "line.csv"} << "0,0,1\n1,1,1\n2,2,1\n";
  std::ofstream{folder.path / "two.csv"} << "0,0,1\n9,0,1\n0,9,1\n9,0,2\n";
  std::ofstream{folder.path / "none.csv"} << "";
  for (const char* name : {"line.csv", "two.csv", "none.csv", "missing.csv"}) {
    INFO(name);
    CHECK_FALSE(import_ground(folder.path / name, {}).has_value());
  }
  CHECK(import_ground(folder.path / "two.csv", {}).error().front().where == "two.csv, line 4");
}

TEST_CASE("What is no raster, or would need too many cells, is refused") {
  const Folder folder;
  std::ofstream{folder.path / "words.tif"} << "this is no raster";
  write(folder.path / "utm.tif", {}, metric_plane);
  CHECK_FALSE(import_ground(folder.path / "words.tif", {}).has_value());
  CHECK_FALSE(import_ground(folder.path / "utm.tif", {}, {.cell_m = 0.01}).has_value());
  CHECK_FALSE(import_ground(folder.path / "utm.tif", {}, {.cell_m = 0}).has_value());
}

TEST_CASE("A lot that lies partly off the file is refused with how far and on which side") {
  const Folder folder;
  write(folder.path / "part.tif", {}, [](double, double) { return 300.0; });
  Site site;
  site.lot = rectangular_lot(100, 100);
  site.tie = {26915, 429250, 5150150};  // the raster ends at 429300 m east: half of the lot is off it
  const auto out = import_ground(folder.path / "part.tif", site);
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().front().what.find("164.0 ft short of its east side") != std::string::npos);
}

TEST_CASE("A file that is not there is said to be not there") {
  const auto out = import_ground("nowhere/none.tif", {});
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().front().what == "is not there");
}
