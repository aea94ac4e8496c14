// Picture files as cameras and GIS programs make them, for the tests of reading them.
#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <vector>

namespace yardwright::tests {

struct PictureBytes {
  int wide = 4, high = 3, bands = 3;
  std::vector<std::uint8_t> bytes;  ///< band by band, row by row from the top
  std::optional<std::array<double, 6>> transform = {};
  int epsg = 0;
};

/// `driver` is PNG, JPEG or GTiff.
void write(const PictureBytes& picture, const char* driver, const std::filesystem::path& path);

/// All of one colour.
PictureBytes plain_picture(int wide, int high, std::uint8_t red, std::uint8_t green, std::uint8_t blue);

/// A folder that goes with its test.
struct PictureFolder {
  std::filesystem::path path;
  PictureFolder();
  ~PictureFolder();
  PictureFolder(const PictureFolder&) = delete;
  PictureFolder& operator=(const PictureFolder&) = delete;
};

}  // namespace yardwright::tests
