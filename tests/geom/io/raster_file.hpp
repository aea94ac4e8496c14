// Raster files as other programs make them, for the tests of reading them.
#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <vector>

namespace yardwright::tests {

/// 3 x 2 float cells; `levels` from the north-west corner, row by row.
struct RasterFile {
  std::array<double, 6> transform{10, 2, 0, 104, 0, -2};
  std::vector<float> levels{1, 2, 3, 4, 5, 6};
  int bands = 1;
  int epsg = 0;
  std::optional<double> nodata;
};

void write(const RasterFile& raster, const std::filesystem::path& path);

}  // namespace yardwright::tests
