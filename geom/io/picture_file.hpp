// The pixels of a picture file (PNG, JPEG, GeoTIFF), of bounded size, and a picture brought beside the site file:
// a site never names a file outside its own folder.
#pragma once

#include <filesystem>

#include "geom/shape/pixels.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

inline constexpr std::uintmax_t most_picture_bytes = 1024ULL << 20;
inline constexpr double most_picture_pixels = 1e9;  ///< of the file
/// A larger picture is averaged down to this: what a graphics card takes, and finer than a plan shows.
inline constexpr int longest_picture_side_px = 4096;

/// Whether the name ends as a picture's does: .png, .jpg, .jpeg, .tif, .tiff.
bool is_picture_name(const std::filesystem::path& file);

Expected<Pixels> read_pixels(const std::filesystem::path& file);

struct FileBeside {
  std::string name;
  bool is_copied = false;  ///< and not there before
};

/// Copies a file into the folder of the site file, unless it lies there; the name that it has there. Never over another
/// file: "yard.png" becomes "yard-2.png" where that name is taken by other bytes.
Expected<FileBeside> bring_beside(const std::filesystem::path& file, const std::filesystem::path& site_file);

}  // namespace yardwright
