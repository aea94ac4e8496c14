// The cells of a grid in order of level, ties by offset: a radix sort on the bits of the levels.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace yardwright::drain {

struct Ranking {
  std::vector<std::int32_t> cell_of_rank;
  std::vector<std::int32_t> rank_of_cell;
};

Ranking rank_cells(std::span<const float> level_m);

}  // namespace yardwright::drain
