// A cover of the ground for runoff: NRCS curve numbers by soil group A to D, the rational coefficient, and
// Manning's n of sheet flow over it.
#pragma once

#include <array>
#include <string>
#include <vector>

namespace yardwright {

struct GroundCover {
  std::string id;
  std::string name;
  std::array<double, 4> curve_number{};  ///< soil groups A, B, C, D
  double rational_c = 0;
  double sheet_n = 0;
  std::string source;
  bool operator==(const GroundCover&) const = default;
};

/// "farmstead, gravel, paved": the ids, as a yard file names them.
inline std::string names_of(const std::vector<GroundCover>& covers) {
  std::string names;
  for (const GroundCover& cover : covers) names += (names.empty() ? "" : ", ") + cover.id;
  return names;
}

}  // namespace yardwright
