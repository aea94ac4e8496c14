#include "geom/drain/rank_cells.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <memory>
#include <utility>

namespace yardwright::drain {

namespace {

constexpr int digit_bits = 11, places = 3;
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

using Counts = std::array<std::uint32_t, digits>;

std::size_t digit_of(std::uint32_t key, int place) { return (key >> (place * digit_bits)) & (digits - 1); }

std::array<Counts, places> count_digits(std::span<const float> level_m) {
  std::array<Counts, places> counts{};
  for (const float one_m : level_m) {
    for (int place = 0; place < places; ++place)
      ++counts[static_cast<std::size_t>(place)][digit_of(sortable(one_m), place)];
  }
  return counts;
}

/// Counts become the places where each digit begins.
void sum_up(Counts& counts) {
  std::uint32_t sum = 0;
  for (std::uint32_t& count : counts) sum += std::exchange(count, sum);
}

/// Levels of one yard often share their first digit.
bool all_alike(const Counts& counts, std::size_t cells) {
  return std::ranges::any_of(counts, [&](std::uint32_t count) { return count == cells; });
}

/// A stable radix sort.
class Sorting {
 public:
  explicit Sorting(std::span<const float> level_m) : cells_{level_m.size()}, sorted_{room()}, spare_{room()} {
    auto counts = count_digits(level_m);
    sum_up(counts[0]);
    for (std::size_t i = 0; i < cells_; ++i) {
      const std::uint32_t key = sortable(level_m[i]);
      sorted_[counts[0][digit_of(key, 0)]++] = {key, static_cast<std::int32_t>(i)};
    }
    for (int place = 1; place < places; ++place) sort_by(place, counts[static_cast<std::size_t>(place)]);
  }

  std::span<const Keyed> sorted() const { return {sorted_.get(), cells_}; }

 private:
  std::unique_ptr<Keyed[]> room() const { return std::make_unique_for_overwrite<Keyed[]>(cells_); }

  void sort_by(int place, Counts& counts) {
    if (all_alike(counts, cells_)) return;
    sum_up(counts);
    for (const Keyed& entry : sorted()) spare_[counts[digit_of(entry.key, place)]++] = entry;
    sorted_.swap(spare_);
  }

  std::size_t cells_;
  std::unique_ptr<Keyed[]> sorted_, spare_;
};

}  // namespace

Ranking rank_cells(std::span<const float> level_m) {
  const Sorting sorting{level_m};
  Ranking ranking{std::vector<std::int32_t>(level_m.size()), std::vector<std::int32_t>(level_m.size())};
  std::int32_t rank = 0;
  for (const Keyed& entry : sorting.sorted()) {
    ranking.cell_of_rank[static_cast<std::size_t>(rank)] = entry.cell;
    ranking.rank_of_cell[static_cast<std::size_t>(entry.cell)] = rank++;
  }
  return ranking;
}

}  // namespace yardwright::drain
