// Reads GeoTIFF and ESRI ASCII grids through GDAL, warped into projected metres.
#include <cpl_string.h>
#include <fmt/format.h>
#include <gdalwarper.h>
#include <ogr_spatialref.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "geom/io/gdal_handles.hpp"
#include "geom/io/level_source.hpp"

namespace yardwright {

namespace {

/// A source raster and how to read it; shared by the function that samples it.
struct Raster {
  GdalDataset dataset;
  OGRSpatialReference own;     ///< of the file
  OGRSpatialReference target;  ///< projected metres
  double scale = 1, offset_m = 0;
};

using SharedRaster = std::shared_ptr<Raster>;

int epsg_of(const OGRSpatialReference& system) {
  OGRSpatialReference copy{system};
  copy.AutoIdentifyEPSG();
  const char* code = copy.GetAuthorityCode(nullptr);
  const char* name = copy.GetAuthorityName(nullptr);
  return code && name && std::string{name} == "EPSG" ? std::atoi(code) : 0;
}

bool in_metres(const OGRSpatialReference& system) {
  return system.IsProjected() && std::abs(system.GetLinearUnits() - 1) < 1e-9;
}

/// The UTM zone of a place; of NAD83 where the file is of that datum, so that no datum shift is guessed.
int utm_epsg(const OGRSpatialReference& own, double longitude_deg, double latitude_deg) {
  const int zone = std::clamp(static_cast<int>(std::floor((longitude_deg + 180) / 6)) + 1, 1, 60);
  const char* datum = own.GetAttrValue("DATUM");
  const bool nad83 =
      datum && (std::string{datum}.find("North_American_Datum_1983") == 0 || std::string{datum}.find("NAD83") == 0);
  if (nad83 && latitude_deg > 0 && zone <= 23) return 26900 + zone;
  return (latitude_deg >= 0 ? 32600 : 32700) + zone;
}

struct Transform {
  std::array<double, 6> of_pixels{};
  SitePoint corner(double column, double row) const {
    return {of_pixels[0] + column * of_pixels[1] + row * of_pixels[2],
            of_pixels[3] + column * of_pixels[4] + row * of_pixels[5]};
  }
  bool north_up() const { return of_pixels[2] == 0 && of_pixels[4] == 0 && of_pixels[5] == -of_pixels[1]; }
};

Transform transform_of(GDALDataset& dataset) {
  Transform out;
  dataset.GetGeoTransform(out.of_pixels.data());
  return out;
}

int target_epsg(const Raster& raster, const Site& site) {
  if (site.tie.epsg != 0) return site.tie.epsg;
  if (in_metres(raster.own) && epsg_of(raster.own) != 0) return epsg_of(raster.own);
  OGRSpatialReference degrees = system_of_epsg(4326);
  const std::unique_ptr<OGRCoordinateTransformation> to_degrees{
      OGRCreateCoordinateTransformation(&raster.own, &degrees)};
  SitePoint middle = transform_of(*raster.dataset)
                         .corner(raster.dataset->GetRasterXSize() / 2.0, raster.dataset->GetRasterYSize() / 2.0);
  if (!to_degrees || !to_degrees->Transform(1, &middle.x, &middle.y)) return 0;
  return utm_epsg(raster.own, middle.x, middle.y);
}

/// The largest box that lies inside the raster's four sides, as they run in the target system.
bool find_covered_box(const Raster& raster, LevelSource& out) {
  const std::unique_ptr<OGRCoordinateTransformation> to_target{
      OGRCreateCoordinateTransformation(&raster.own, &raster.target)};
  if (!to_target) return false;
  const Transform pixels = transform_of(*raster.dataset);
  const double wide = raster.dataset->GetRasterXSize(), high = raster.dataset->GetRasterYSize();
  constexpr double far = 1e12;
  out.low = {-far, -far}, out.high = {far, far};
  constexpr int steps = 20;
  for (int i = 0; i <= steps; ++i) {
    const double part = double(i) / steps;
    SitePoint west = pixels.corner(0, part * high), east = pixels.corner(wide, part * high);
    SitePoint north = pixels.corner(part * wide, 0), south = pixels.corner(part * wide, high);
    for (SitePoint* at : {&west, &east, &north, &south}) {
      if (!to_target->Transform(1, &at->x, &at->y)) return false;
    }
    out.low = {std::max(out.low.x, west.x), std::max(out.low.y, south.y)};
    out.high = {std::min(out.high.x, east.x), std::min(out.high.y, north.y)};
  }
  if (raster.own.IsSame(&raster.target) && pixels.north_up()) out.lattice_m = pixels.of_pixels[1];
  return out.low.x < out.high.x && out.low.y < out.high.y;
}

/// The unit that a text names, in metres; 0 where it names none that is known.
double metres_in_named(std::string name) {
  std::ranges::transform(name, name.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  if (name.empty()) return 0;
  if (name.find("survey") != std::string::npos || name == "us-ft" || name == "ftus")
    return metres_in(MapUnit::us_survey_foot);
  if (name == "ft" || name.find("foot") == 0 || name.find("feet") == 0) return metres_in(MapUnit::foot);
  return name == "m" || name.find("met") == 0 ? 1.0 : 0.0;
}

/// Levels' unit: as asked, else as the band says, else the vertical system, else metres beside metric coordinates.
double vertical_unit_m(Raster& raster, const ImportOptions& options, std::vector<std::string>& notes) {
  if (options.vertical_unit) return metres_in(*options.vertical_unit);
  if (const double named = metres_in_named(raster.dataset->GetRasterBand(1)->GetUnitType()); named > 0) {
    notes.push_back(fmt::format("levels are in {}, as the file says", raster.dataset->GetRasterBand(1)->GetUnitType()));
    return named;
  }
  if (raster.own.IsVertical()) {
    const double unit_m = raster.own.GetTargetLinearUnits("VERT_CS");
    notes.push_back(fmt::format("levels are in units of {:.6g} m, as the file's vertical system says", unit_m));
    return unit_m;
  }
  if (raster.own.IsProjected() && !in_metres(raster.own)) return 0;
  notes.emplace_back(
      "levels are taken as metres: the file does not say their unit (--vertical-unit ft where they are feet)");
  return 1;
}

/// From the pixels of one to those of the other; a file that does not say its system is in the one that was given.
void* pixel_transformer(const Raster& raster, GDALDataset& into) {
  CPLStringList options;
  if (raster.dataset->GetSpatialRef() == nullptr) {
    char* system = nullptr;
    raster.own.exportToWkt(&system);
    options.SetNameValue("SRC_SRS", system);
    CPLFree(system);
  }
  return GDALCreateGenImgProjTransformer2(raster.dataset.get(), &into, options.List());
}

bool warp(const Raster& raster, GDALDataset& into, double no_level) {
  std::unique_ptr<GDALWarpOptions, decltype(&GDALDestroyWarpOptions)> options{GDALCreateWarpOptions(),
                                                                              GDALDestroyWarpOptions};
  options->hSrcDS = raster.dataset.get();
  options->hDstDS = &into;
  options->eResampleAlg = GRA_Bilinear;
  options->eWorkingDataType = GDT_Float64;
  GDALWarpInitDefaultBandMapping(options.get(), 1);
  int has_no_data = 0;
  const double no_data = raster.dataset->GetRasterBand(1)->GetNoDataValue(&has_no_data);
  if (has_no_data) GDALWarpInitSrcNoDataReal(options.get(), no_data);
  GDALWarpInitDstNoDataReal(options.get(), no_level);
  options->papszWarpOptions = CSLSetNameValue(options->papszWarpOptions, "INIT_DEST", "NO_DATA");
  void* exact = pixel_transformer(raster, into);
  if (!exact) return false;
  constexpr double error_px = 0.01;
  void* approximate = GDALCreateApproxTransformer(GDALGenImgProjTransform, exact, error_px);
  GDALApproxTransformerOwnsSubtransformer(approximate, TRUE);
  options->pTransformerArg = approximate;
  options->pfnTransformer = GDALApproxTransform;
  GDALWarpOperation operation;
  const bool done = operation.Initialize(options.get()) == CE_None &&
                    operation.ChunkAndWarpImage(0, 0, into.GetRasterXSize(), into.GetRasterYSize()) == CE_None;
  GDALDestroyApproxTransformer(approximate);
  return done;
}

/// Row 0 of a raster is its northmost, of a frame its southmost.
std::vector<double> sample(Raster& raster, const GridFrame& frame, EarthPoint origin) {
  const QuietGdal quiet;
  constexpr double no_level = -1e30;
  const GdalDataset into = memory_grid(frame.columns, frame.rows);
  std::vector<double> levels_m(frame.cells(), std::nan(""));
  if (!into) return levels_m;
  const double west = origin.x + frame.south_west.x;
  const double north = origin.y + frame.south_west.y + frame.rows * frame.cell_m;
  std::array<double, 6> pixels{west, frame.cell_m, 0, north, 0, -frame.cell_m};
  into->SetGeoTransform(pixels.data());
  into->SetSpatialRef(&raster.target);
  if (!warp(raster, *into, no_level)) return levels_m;
  std::vector<double> row(static_cast<std::size_t>(frame.columns));
  for (int from_north = 0; from_north < frame.rows; ++from_north) {
    if (into->GetRasterBand(1)->RasterIO(GF_Read, 0, from_north, frame.columns, 1, row.data(), frame.columns, 1,
                                         GDT_Float64, 0, 0, nullptr) != CE_None)
      continue;
    double* out = &levels_m[frame.offset({0, frame.rows - 1 - from_north})];
    for (const double raw : row) *out++ = raw == no_level ? std::nan("") : raw * raster.scale + raster.offset_m;
  }
  return levels_m;
}

/// The file's own coordinate system without its heights; what the options say where it has none.
bool find_own_system(Raster& raster, const ImportOptions& options, LevelSource& out) {
  const OGRSpatialReference* said = raster.dataset->GetSpatialRef();
  if (said)
    raster.own = *said;
  else if (options.epsg != 0)
    raster.own = system_of_epsg(options.epsg);
  else
    return false;
  raster.own.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  out.coordinate_system = raster.own.GetName() ? raster.own.GetName() : "unnamed";
  return true;
}

}  // namespace

Expected<LevelSource> open_raster(const std::filesystem::path& file, const Site& site, const ImportOptions& options) {
  const QuietGdal quiet;
  const std::string where = file.filename().string();
  if (std::error_code error; !std::filesystem::exists(file, error))
    return refused("is not there", file.string(),
                   "give the path of a GeoTIFF, an ESRI ASCII grid or a list of spot levels");
  const char* const drivers[] = {"GTiff", "AAIGrid", nullptr};  // no format that names further files
  auto raster = std::make_shared<Raster>();
  raster->dataset.reset(GDALDataset::Open(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers, nullptr, nullptr));
  const std::string reason = quiet.message();
  if (!raster->dataset)
    return refused("is no raster that can be read" + (reason.empty() ? "" : ": " + reason), where,
                   "give a GeoTIFF, an ESRI ASCII grid or a list of spot levels");
  if (raster->dataset->GetRasterCount() != 1)
    return refused("has more than one band", where, "give a raster whose only band is the ground's level");
  LevelSource out;
  if (!find_own_system(*raster, options, out))
    return refused("does not say its coordinate system", where, "give its EPSG code, as in --epsg 26915");
  const double unit_m = vertical_unit_m(*raster, options, out.notes);
  if (unit_m == 0)
    return refused("lies in feet and does not say whether its levels are feet or metres", where,
                   "give --vertical-unit ft, us-ft or m");
  raster->own.DemoteTo2D(nullptr);
  raster->scale = unit_m * raster->dataset->GetRasterBand(1)->GetScale();
  raster->offset_m = unit_m * raster->dataset->GetRasterBand(1)->GetOffset();
  out.epsg = target_epsg(*raster, site);
  raster->target = system_of_epsg(out.epsg);
  if (out.epsg == 0 || !in_metres(raster->target) || !find_covered_box(*raster, out)) {
    return refused("cannot be brought from " + out.coordinate_system + " into projected metres", where,
                   "reproject it to a UTM zone first");
  }
  out.sample = [raster](const GridFrame& frame, EarthPoint origin) { return sample(*raster, frame, origin); };
  return out;
}

}  // namespace yardwright
