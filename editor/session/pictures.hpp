// The pictures under the plan that is being edited: their pixels, held while the window runs, and what becomes of their
// files when the yard moves to another folder.
#pragma once

#include <filesystem>
#include <future>
#include <map>
#include <optional>

#include "editor/session/session.hpp"
#include "geom/sheet/plan_drawing.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

class HeldPictures {
 public:
  /// Begins to read, beside the frames, what is not held yet, and takes up what has been read; a sentence for what could
  /// not be, else empty.
  std::string read(const Site& site, const std::optional<std::filesystem::path>& site_file);
  /// The file that is being read; empty where none is.
  std::string being_read() const { return coming_.empty() ? "" : coming_.begin()->first; }
  /// Whether read() has something to take up.
  bool has_news() const;
  /// What can be drawn of a site.
  std::vector<PicturePixels> of(const Site& site) const;

 private:
  void forget();
  std::string take_up();

  std::filesystem::path folder_;
  std::map<std::string, Pixels> held_;  ///< by file name; empty where it could not be read
  std::map<std::string, std::future<Expected<Pixels>>> coming_;
  std::vector<std::future<Expected<Pixels>>> left_;  ///< of another folder, and not yet at their end
};

/// What was brought beside the site file stays there where the site names it now.
void keep_saved_pictures(Session& session, const std::filesystem::path& site_file);

/// The site with its pictures copied beside another site file, as a save under another name needs.
Expected<Site> with_pictures_beside(Site site, const std::filesystem::path& from_site_file,
                                    const std::filesystem::path& to_site_file);

}  // namespace yardwright::session
