#include "geom/drain/storm/tile_water.hpp"

#include <algorithm>
#include <cassert>

namespace yardwright::drain::storm {

TileShares tile_shares(const std::vector<TileRun>& lines, const std::vector<double>& wanted_m3,
                       const std::vector<TileLevels>& levels, double open_ratio, double step_s) {
  assert(wanted_m3.size() == lines.size() && levels.size() == lines.size());
  TileShares shares{std::vector<double>(lines.size(), 1.0), {}, wanted_m3};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (shares.wanted_m3[i] <= 0) continue;
    const double most_m3 = open_ratio * tile_m3_per_s(lines[i].pipe, levels[i].start_m, levels[i].outlet_m) * step_s;
    shares.of_line[i] = std::min(1.0, most_m3 / shares.wanted_m3[i]);
    if (lines[i].end == TileEnd::line) {
      assert(lines[i].line > i);
      shares.wanted_m3[lines[i].line] += shares.wanted_m3[i] * shares.of_line[i];
    }
  }
  for (std::size_t i = lines.size(); i-- > 0;) {
    if (lines[i].end == TileEnd::line) shares.of_line[i] *= shares.of_line[lines[i].line];
  }
  for (std::size_t i = 0; i < lines.size(); ++i) shares.out_m3.push_back(shares.wanted_m3[i] * shares.of_line[i]);
  return shares;
}

}  // namespace yardwright::drain::storm
