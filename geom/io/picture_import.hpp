// A picture brought under a plan: copied beside the site file, and placed by its own coordinates where it has them and
// the site is tied to the earth; else as large as it says that it is, or as wide as the lot, on the lot's middle, to be
// fitted by two points.
#pragma once

#include <filesystem>

#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

enum class PicturePlacing : std::uint8_t { by_coordinates, by_size, on_lot };

struct ImportedPicture {
  Picture picture;
  PicturePlacing placing = PicturePlacing::on_lot;
  std::string note;                 ///< how it was placed and what is still to do, a sentence
  bool is_copied = false;           ///< into the folder of the site file, where it was not before
  int width_px = 0, height_px = 0;  ///< of the file
};

Expected<ImportedPicture> import_picture(const std::filesystem::path& file, const std::filesystem::path& site_file,
                                         const Site& site);

}  // namespace yardwright
