// What is wrong with a site as a whole that no field shows by itself: references to items that are not there,
// paths that are too short, a lot that crosses itself, file names that lead out of the folder.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright {

struct SiteFault {
  const Item* item = nullptr;  ///< of the site that was asked about; null: the part below
  std::string_view part;       ///< "lot", "ground"
  std::string_view field;
  std::string what;
  std::string mend;
};

/// `also_there`: ids of items that are in the file but could not be read, so that naming them is no second fault.
std::vector<SiteFault> faults_of(const Site& site, const std::set<ItemId>& also_there = {});

}  // namespace yardwright
