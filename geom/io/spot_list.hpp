// A list of spot levels as text: one x, y and level a line, parted by commas, semicolons, tabs or spaces, with or
// without a line of column names. Numbers stay in the list's own units. Blank lines and lines from # are skipped.
#pragma once

#include <string_view>
#include <vector>

#include "geom/units/problem.hpp"

namespace yardwright {

struct Spot {
  double x = 0, y = 0, level = 0;
  int line = 0;  ///< in the file, from 1
};

inline constexpr std::size_t most_spots = 1'000'000;

/// All that is wrong, line by line, the first twenty of them; `name` stands for the file. Columns are found by
/// their names (x or easting, y or northing, z, level or elevation); without names they are the first three.
Expected<std::vector<Spot>> read_spot_list(std::string_view text, std::string_view name);

}  // namespace yardwright
