// GDAL's datasets held safely, with its drivers registered once and its messages kept off the error stream.
// Included by the .cpp files of geom/io that read and write rasters.
#pragma once

#include <cpl_error.h>
#include <gdal_priv.h>
#include <ogr_spatialref.h>

#include <memory>

namespace yardwright {

struct CloseDataset {
  void operator()(GDALDataset* dataset) const { GDALClose(dataset); }
};
using GdalDataset = std::unique_ptr<GDALDataset, CloseDataset>;

/// Keeps GDAL from printing while it lives; the last message can be asked for.
class QuietGdal {
 public:
  QuietGdal() {
    // The library would keep a twentieth of the machine's memory in blocks of a large raster.
    constexpr long long most_cached_bytes = 64LL << 20;
    static const bool registered = (GDALAllRegister(), GDALSetCacheMax64(most_cached_bytes), true);
    static_cast<void>(registered);
    CPLPushErrorHandler(CPLQuietErrorHandler);
    CPLErrorReset();
  }
  ~QuietGdal() { CPLPopErrorHandler(); }
  QuietGdal(const QuietGdal&) = delete;
  QuietGdal& operator=(const QuietGdal&) = delete;
  const char* message() const { return CPLGetLastErrorMsg(); }
};

/// A grid of doubles in memory, one band.
inline GdalDataset memory_grid(int columns, int rows) {
  const QuietGdal quiet;
  return GdalDataset{
      GetGDALDriverManager()->GetDriverByName("MEM")->Create("", columns, rows, 1, GDT_Float64, nullptr)};
}

/// With x east and y north, whatever order the authority gives.
inline OGRSpatialReference system_of_epsg(int epsg) {
  OGRSpatialReference out;
  out.importFromEPSG(epsg);
  out.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  return out;
}

}  // namespace yardwright
