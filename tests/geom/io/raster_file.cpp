#include "tests/geom/io/raster_file.hpp"

#include <gdal_priv.h>
#include <ogr_spatialref.h>

namespace yardwright::tests {

void write(const RasterFile& raster, const std::filesystem::path& path) {
  GDALRegister_GTiff();
  GDALDriver* driver = GetGDALDriverManager()->GetDriverByName("GTiff");
  const GDALDatasetUniquePtr file{driver->Create(path.c_str(), 3, 2, raster.bands, GDT_Float32, nullptr)};
  auto transform = raster.transform;
  file->SetGeoTransform(transform.data());
  OGRSpatialReference system;
  if (raster.epsg != 0 && system.importFromEPSG(raster.epsg) == OGRERR_NONE) file->SetSpatialRef(&system);
  auto levels = raster.levels;
  for (int band = 1; band <= raster.bands; ++band) {
    if (raster.nodata) file->GetRasterBand(band)->SetNoDataValue(*raster.nodata);
    if (file->GetRasterBand(band)->RasterIO(GF_Write, 0, 0, 3, 2, levels.data(), 3, 2, GDT_Float32, 0, 0, nullptr) !=
        CE_None)
      return;
  }
}

}  // namespace yardwright::tests
