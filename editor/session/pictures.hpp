// The pictures under the plan that is being edited: their pixels, held while the window runs, and what becomes of their
// files when the yard moves to another folder.
#pragma once

#include <filesystem>
#include <map>
#include <optional>

#include "geom/sheet/plan_drawing.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

class HeldPictures {
 public:
  /// Reads what is not held yet; a sentence for what could not be read now, else empty.
  std::string read(const Site& site, const std::optional<std::filesystem::path>& site_file);
  /// What can be drawn of a site.
  std::vector<PicturePixels> of(const Site& site) const;

 private:
  std::filesystem::path folder_;
  std::map<std::string, Pixels> held_;  ///< by file name; empty where it could not be read
};

/// The site with its pictures copied beside another site file, as a save under another name needs.
Expected<Site> with_pictures_beside(Site site, const std::filesystem::path& from_site_file,
                                    const std::filesystem::path& to_site_file);

}  // namespace yardwright::session
