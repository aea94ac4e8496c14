// A queue of whole numbers below a limit that gives back the smallest: a tree of bit sets, 64 children a word, so
// that adding and taking cost a few operations whatever it holds.
#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace yardwright::drain {

class RankQueue {
 public:
  explicit RankQueue(std::size_t limit) {
    do {
      limit = (limit + 63) / 64;
      floors_.emplace_back(limit);
    } while (limit > 1);
  }

  bool empty() const { return floors_.back()[0] == 0; }

  void add(std::size_t rank) {
    for (auto& floor : floors_) {
      std::uint64_t& word = floor[rank / 64];
      const bool known_above = word != 0;
      word |= std::uint64_t{1} << (rank % 64);
      if (known_above) return;
      rank /= 64;
    }
  }

  /// The smallest, taken out; the queue must not be empty.
  std::size_t take() {
    std::size_t rank = 0;
    for (std::size_t floor = floors_.size(); floor-- > 0;) {
      rank = rank * 64 + static_cast<std::size_t>(std::countr_zero(floors_[floor][rank]));
    }
    std::size_t gone = rank;
    for (auto& floor : floors_) {
      floor[gone / 64] &= ~(std::uint64_t{1} << (gone % 64));
      if (floor[gone / 64] != 0) break;
      gone /= 64;
    }
    return rank;
  }

 private:
  std::vector<std::vector<std::uint64_t>> floors_;  ///< the lowest first; the highest is one word
};

}  // namespace yardwright::drain
