// The pixels of a site's pictures, read from the folder of the site file, for whoever draws its plan.
#pragma once

#include <filesystem>

#include "geom/sheet/plan_drawing.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

struct SitePictures {
  std::vector<PicturePixels> pictures;
  Problems problems;  ///< pictures that could not be read: their frame stands in the plan
};

SitePictures read_site_pictures(const Site& site, const std::filesystem::path& site_file);

/// One of them.
Expected<Pixels> read_site_picture(const std::string& name, const std::filesystem::path& site_file);

}  // namespace yardwright
