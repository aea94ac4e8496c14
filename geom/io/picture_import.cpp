#include "geom/io/picture_import.hpp"

#include <array>
#include <cmath>

#include "geom/io/gdal_handles.hpp"
#include "geom/io/picture_file.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright {

namespace {

namespace fs = std::filesystem;

/// A picture's middle and the middles of its sides, in the coordinates of a file or of the site.
struct Cross {
  SitePoint middle, left, right, top, bottom;

  std::array<SitePoint*, 5> points() { return {&middle, &left, &right, &top, &bottom}; }
};

struct Source {
  GdalDataset dataset;
  double wide = 0, high = 0;  ///< pixels
  std::array<double, 6> of_pixels{};
  bool has_place = false;

  SitePoint corner(double column, double row) const {
    return {of_pixels[0] + column * of_pixels[1] + row * of_pixels[2],
            of_pixels[3] + column * of_pixels[4] + row * of_pixels[5]};
  }
  Cross cross() const {
    return {corner(wide / 2, high / 2), corner(0, high / 2), corner(wide, high / 2), corner(wide / 2, 0),
            corner(wide / 2, high)};
  }
  const OGRSpatialReference* system() const { return has_place ? dataset->GetSpatialRef() : nullptr; }
};

Source source_of(const fs::path& file) {
  Source source;
  const char* const drivers[] = {"PNG", "JPEG", "GTiff", nullptr};
  const char* const no_siblings[] = {nullptr};
  source.dataset.reset(
      GDALDataset::Open(file.c_str(), GDAL_OF_RASTER | GDAL_OF_READONLY, drivers, nullptr, no_siblings));
  source.wide = source.dataset->GetRasterXSize();
  source.high = source.dataset->GetRasterYSize();
  source.has_place = source.dataset->GetGeoTransform(source.of_pixels.data()) == CE_None;
  return source;
}

/// Moved and turned to where the cross lies; a slight shear of the map projections is left out.
Picture laid_on(Picture picture, const Cross& cross) {
  picture.at = cross.middle;
  picture.width_m = distance(cross.left, cross.right);
  picture.proportion_ratio = distance(cross.top, cross.bottom) / picture.width_m;
  picture.facing = bearing_of(cross.top - cross.bottom);
  return picture;
}

std::optional<Picture> placed_on_earth(const Picture& picture, const Source& source, const EarthTie& tie) {
  if (tie.epsg == 0 || source.system() == nullptr) return std::nullopt;
  OGRSpatialReference own{*source.system()}, target = system_of_epsg(tie.epsg);
  own.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  own.DemoteTo2D(nullptr);
  const std::unique_ptr<OGRCoordinateTransformation> to_target{OGRCreateCoordinateTransformation(&own, &target)};
  if (!to_target) return std::nullopt;
  Cross cross = source.cross();
  const double unit_m = target.GetLinearUnits();
  for (SitePoint* at : cross.points()) {
    if (!to_target->Transform(1, &at->x, &at->y)) return std::nullopt;
    *at = {at->x * unit_m - tie.easting_m, at->y * unit_m - tie.northing_m};
  }
  return laid_on(picture, cross);
}

/// Its size on the ground, of a file in projected coordinates.
std::optional<double> own_width_m(const Source& source) {
  const OGRSpatialReference* system = source.system();
  if (system == nullptr || system->IsProjected() == 0) return std::nullopt;
  const Cross cross = source.cross();
  return distance(cross.left, cross.right) * system->GetLinearUnits();
}

Box lot_box(const Site& site) { return site.lot.corners.empty() ? Box{{0, 0}, {100, 100}} : box_of(site.lot.corners); }

bool is_sensible(const Picture& picture) {
  return std::isfinite(picture.at.x + picture.at.y) && picture.width_m >= 0.1 && picture.width_m <= 100'000 &&
         picture.proportion_ratio >= 0.001 && picture.proportion_ratio <= 1000;
}

ImportedPicture placed(const Source& source, const Site& site) {
  ImportedPicture out;
  out.width_px = static_cast<int>(source.wide);
  out.height_px = static_cast<int>(source.high);
  const Box lot = lot_box(site);
  out.picture.at = between(lot.low, lot.high, 0.5);
  out.picture.width_m = lot.high.x - lot.low.x;
  out.picture.proportion_ratio = source.high / source.wide;
  out.note = "it does not say where it lies: fit it by two points";
  if (const auto wide_m = own_width_m(source)) {
    out.picture.width_m = *wide_m;
    out.placing = PicturePlacing::by_size;
    out.note = "it has its own size, but the site has no EPSG code to place it by: fit it by two points";
  }
  if (const auto on_earth = placed_on_earth(out.picture, source, site.tie); on_earth && is_sensible(*on_earth)) {
    out.picture = *on_earth;
    out.placing = PicturePlacing::by_coordinates;
    out.note = "it lies where its own coordinates say";
  }
  return out;
}

}  // namespace

Expected<ImportedPicture> import_picture(const fs::path& file, const fs::path& site_file, const Site& site) {
  const auto readable = read_pixels(file);
  if (!readable) return tl::unexpected{readable.error()};
  const QuietGdal quiet;
  ImportedPicture out = placed(source_of(file), site);
  if (!is_sensible(out.picture))
    return refused("has no sensible size on the ground", file.filename().string(),
                   "give a picture without coordinates and fit it by two points");
  auto beside = bring_beside(file, site_file);
  if (!beside) return tl::unexpected{beside.error()};
  out.picture.file = std::move(beside->name);
  out.is_copied = beside->is_copied;
  return out;
}

}  // namespace yardwright
