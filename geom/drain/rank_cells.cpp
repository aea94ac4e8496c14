#include "geom/drain/rank_cells.hpp"

#include <array>
#include <bit>
#include <utility>

namespace yardwright::drain {

namespace {

constexpr int digit_bits = 11;
constexpr std::size_t digits = std::size_t{1} << digit_bits;

/// A whole number that orders as the float does; -0 is made 0 first, so that the two tie.
std::uint32_t sortable(float level_m) {
  const auto bits = std::bit_cast<std::uint32_t>(level_m + 0.0F);
  return bits ^ ((bits & 0x80000000U) != 0 ? 0xFFFFFFFFU : 0x80000000U);
}

struct Keyed {
  std::uint32_t key;
  std::int32_t cell;
};

/// One pass of a stable radix sort.
void sort_by_digit(const std::vector<Keyed>& from, std::vector<Keyed>& to, int shift) {
  std::array<std::uint32_t, digits> start{};
  for (const Keyed& entry : from) ++start[(entry.key >> shift) & (digits - 1)];
  std::uint32_t sum = 0;
  for (std::uint32_t& count : start) sum += std::exchange(count, sum);
  for (const Keyed& entry : from) to[start[(entry.key >> shift) & (digits - 1)]++] = entry;
}

}  // namespace

Ranking rank_cells(std::span<const float> level_m) {
  std::vector<Keyed> sorted(level_m.size()), spare(level_m.size());
  for (std::size_t i = 0; i < level_m.size(); ++i) sorted[i] = {sortable(level_m[i]), static_cast<std::int32_t>(i)};
  for (const int shift : {0, digit_bits, 2 * digit_bits}) {
    sort_by_digit(sorted, spare, shift);
    sorted.swap(spare);
  }
  Ranking ranking{std::vector<std::int32_t>(level_m.size()), std::vector<std::int32_t>(level_m.size())};
  for (std::size_t rank = 0; rank < sorted.size(); ++rank) {
    ranking.cell_of_rank[rank] = sorted[rank].cell;
    ranking.rank_of_cell[static_cast<std::size_t>(sorted[rank].cell)] = static_cast<std::int32_t>(rank);
  }
  return ranking;
}

}  // namespace yardwright::drain
