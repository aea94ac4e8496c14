#include "geom/io/ground_file.hpp"

#include <cpl_error.h>
#include <fmt/format.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstring>
#include <optional>

#include "geom/io/whole_file.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

namespace fs = std::filesystem;

constexpr std::int64_t most_cells = 50'000'000;
constexpr double lowest_level_m = -500, highest_level_m = 9000;
constexpr const char* frame_key = "YARDWRIGHT_FRAME";
constexpr double square_tolerance_ratio = 1e-9;
constexpr double same_frame_ratio = 1e-3;  // of a cell, between the exact frame and the file's own

/// GDAL prints its errors unless told otherwise.
struct Quietly {
  Quietly() { CPLPushErrorHandler(CPLQuietErrorHandler); }
  ~Quietly() { CPLPopErrorHandler(); }
};

tl::unexpected<Problems> problem_of(const fs::path& path, std::string what, std::string mend) {
  return refused(std::move(what), path.filename().string(), std::move(mend));
}

/// Where the file's coordinates lie: site metres = file coordinates * unit_m - (easting, northing).
struct FileFrame {
  OGRSpatialReference system;
  double unit_m = 1;
  double easting_m = 0;
  double northing_m = 0;
};

Expected<FileFrame> frame_of_tie(const EarthTie& tie, const fs::path& path) {
  FileFrame frame;
  if (tie.epsg == 0) return frame;
  if (frame.system.importFromEPSG(tie.epsg) != OGRERR_NONE || frame.system.IsProjected() == 0) {
    return problem_of(path, fmt::format("EPSG {} is no projected coordinate system that is known", tie.epsg),
                      "give the code of a projected system (UTM, state plane), or 0");
  }
  frame.unit_m = frame.system.GetLinearUnits();
  frame.easting_m = tie.easting_m;
  frame.northing_m = tie.northing_m;
  return frame;
}

/// A file without a coordinate system is in the site frame, tie or no tie.
Expected<FileFrame> frame_of_file(GDALDataset& file, const EarthTie& tie, const fs::path& path) {
  const OGRSpatialReference* system = file.GetSpatialRef();
  if (system == nullptr || system->IsLocal() != 0) return FileFrame();
  auto frame = frame_of_tie(tie, path);
  if (!frame) return frame;
  const char* code = system->GetAuthorityCode(nullptr);
  const bool same = tie.epsg != 0 && (code == nullptr || tie.epsg == std::atoi(code));
  if (same) return frame;
  return problem_of(
      path, fmt::format("is in EPSG {}, the site's tie is EPSG {}", code == nullptr ? "(unknown)" : code, tie.epsg),
      "give the site that tie, or warp the file to the site's system");
}

std::string frame_text(const GridFrame& frame) {
  return fmt::format("{} {} {}", frame.south_west.x, frame.south_west.y, frame.cell_m);
}

/// The frame to the last bit, which a corner that was added up along the rows need not be.
std::optional<GridFrame> exact_frame(GDALDataset& file) {
  const char* text = file.GetMetadataItem(frame_key);
  if (text == nullptr) return std::nullopt;
  GridFrame frame;
  const char* last = text + std::strlen(text);
  for (double* value : {&frame.south_west.x, &frame.south_west.y, &frame.cell_m}) {
    const auto [end, error] = std::from_chars(text, last, *value);
    if (error != std::errc{}) return std::nullopt;
    text = end + (end != last ? 1 : 0);
  }
  frame.columns = file.GetRasterXSize();
  frame.rows = file.GetRasterYSize();
  return frame;
}

bool nearly_same(const GridFrame& a, const GridFrame& b) {
  const double tolerance_m = same_frame_ratio * b.cell_m;
  return distance(a.south_west, b.south_west) < tolerance_m && std::abs(a.cell_m - b.cell_m) * b.columns < tolerance_m;
}

Expected<GridFrame> grid_frame(GDALDataset& file, const EarthTie& tie, const fs::path& path) {
  const auto lies = frame_of_file(file, tie, path);
  if (!lies) return tl::unexpected{lies.error()};
  std::array<double, 6> t{};
  if (file.GetGeoTransform(t.data()) != CE_None)
    return problem_of(path, "does not say where it lies", "georeference it");
  const bool north_up = t[2] == 0 && t[4] == 0 && t[1] > 0 && t[5] < 0;
  if (!north_up || std::abs(t[1] + t[5]) > square_tolerance_ratio * t[1] || !std::isfinite(t[0] + t[1] + t[3])) {
    return problem_of(path, "has cells that are not square with north up", "warp it to square cells, north up");
  }
  GridFrame frame;
  frame.columns = file.GetRasterXSize();
  frame.rows = file.GetRasterYSize();
  frame.cell_m = t[1] * lies->unit_m;
  frame.south_west = {t[0] * lies->unit_m - lies->easting_m,
                      (t[3] + t[5] * frame.rows) * lies->unit_m - lies->northing_m};
  const auto exact = exact_frame(file);
  return exact && nearly_same(*exact, frame) ? *exact : frame;
}

/// GDAL's rows go south, a grid's go north.
std::vector<float> north_and_south_swapped(const std::vector<float>& values, const GridFrame& frame) {
  std::vector<float> swapped;
  swapped.reserve(values.size());
  for (int row = frame.rows - 1; row >= 0; --row) {
    const auto first = values.begin() + static_cast<std::ptrdiff_t>(frame.offset({0, row}));
    swapped.insert(swapped.end(), first, first + frame.columns);
  }
  return swapped;
}

std::size_t cells_without_level(GDALRasterBand& band, const std::vector<float>& levels) {
  int has_nodata = 0;
  const auto nodata = static_cast<float>(band.GetNoDataValue(&has_nodata));
  std::size_t count = 0;
  for (const float level : levels) {
    const bool sensible = level >= lowest_level_m && level <= highest_level_m;
    if (!sensible || (has_nodata != 0 && level == nodata)) ++count;
  }
  return count;
}

Expected<LevelGrid> read_levels(GDALDataset& file, const GridFrame& frame, const fs::path& path) {
  GDALRasterBand& band = *file.GetRasterBand(1);
  std::vector<float> levels(frame.cells());
  if (band.RasterIO(GF_Read, 0, 0, frame.columns, frame.rows, levels.data(), frame.columns, frame.rows, GDT_Float32, 0,
                    0, nullptr) != CE_None) {
    return problem_of(path, "breaks off or is damaged", "make it anew");
  }
  if (const std::size_t without = cells_without_level(band, levels); without > 0) {
    return problem_of(path, fmt::format("{} of its {} cells have no level in metres", without, levels.size()),
                      "cut it to where there are levels, or fill the gaps (gdal_fillnodata.py)");
  }
  return LevelGrid{frame, north_and_south_swapped(levels, frame)};
}

GDALDatasetUniquePtr opened(const fs::path& path) {
  GDALRegister_GTiff();
  const char* const drivers[] = {"GTiff", nullptr};
  const char* const no_siblings[] = {nullptr};  // nothing beside the file is to change what it says
  return GDALDatasetUniquePtr{
      GDALDataset::Open(path.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers, nullptr, no_siblings)};
}

GDALDatasetUniquePtr created(const fs::path& path, const GridFrame& frame) {
  GDALRegister_GTiff();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
  const char* const options[] = {"COMPRESS=DEFLATE", "PREDICTOR=3", nullptr};
  return GDALDatasetUniquePtr{driver->Create(path.c_str(), frame.columns, frame.rows, 1, GDT_Float32, options)};
}

bool write_levels(const LevelGrid& grid, const FileFrame& lies, const fs::path& path) {
  const GridFrame& frame = grid.frame();
  const auto file = created(path, frame);
  if (file == nullptr) return false;
  const double north_m = frame.south_west.y + frame.rows * frame.cell_m + lies.northing_m;
  const double cell = frame.cell_m / lies.unit_m;
  std::array<double, 6> t{
      (frame.south_west.x + lies.easting_m) / lies.unit_m, cell, 0, north_m / lies.unit_m, 0, -cell};
  if (file->SetGeoTransform(t.data()) != CE_None) return false;
  if (!lies.system.IsEmpty() && file->SetSpatialRef(&lies.system) != CE_None) return false;
  file->SetMetadataItem(frame_key, frame_text(frame).c_str());
  auto levels = north_and_south_swapped(grid.values(), frame);
  const CPLErr wrote = file->GetRasterBand(1)->RasterIO(GF_Write, 0, 0, frame.columns, frame.rows, levels.data(),
                                                        frame.columns, frame.rows, GDT_Float32, 0, 0, nullptr);
  file->FlushCache(true);
  return wrote == CE_None && CPLGetLastErrorType() < CE_Failure;
}

}  // namespace

Expected<LevelGrid> load_level_grid(const fs::path& path, const EarthTie& tie) {
  if (std::error_code error; !fs::exists(path, error))
    return problem_of(path, "is not there", "put the ground's GeoTIFF back beside the site file");
  const Quietly quietly;
  const auto file = opened(path);
  if (file == nullptr)
    return problem_of(path, "is no GeoTIFF that can be read", "put the ground's GeoTIFF beside the site file");
  if (file->GetRasterCount() != 1) {
    return problem_of(path, fmt::format("has {} bands", file->GetRasterCount()), "give a file with one band of levels");
  }
  if (static_cast<std::int64_t>(file->GetRasterXSize()) * file->GetRasterYSize() > most_cells) {
    return problem_of(path, "has more than 50 million cells", "cut it to the yard, or make its cells larger");
  }
  const auto frame = grid_frame(*file, tie, path);
  if (!frame) return tl::unexpected{frame.error()};
  return read_levels(*file, *frame, path);
}

tl::expected<void, Problems> save_level_grid(const LevelGrid& grid, const EarthTie& tie, const fs::path& path) {
  const Quietly quietly;
  if (grid.empty()) return problem_of(path, "there are no levels to write", "give the site a ground first");
  const auto lies = frame_of_tie(tie, path);
  if (!lies) return tl::unexpected{lies.error()};
  CPLErrorReset();
  const fs::path temporary = temporary_beside(path);
  if (write_levels(grid, *lies, temporary)) return put_in_place(temporary, path);
  std::error_code ignored;
  fs::remove(temporary, ignored);
  return problem_of(path, fmt::format("cannot be written: {}", CPLGetLastErrorMsg()),
                    "check the folder and the room on the disk");
}

}  // namespace yardwright
