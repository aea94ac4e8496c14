// A small generator of our own, so that the same seed throws the same on every machine and with every library: SplitMix64.
// Source: G. Steele, D. Lea, C. Flood, Fast splittable pseudorandom number generators, OOPSLA 2014 (from memory).
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>

namespace yardwright::grow {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_{seed} {}
  /// Apart from those of every other number: thrown side by side, whichever is thrown first.
  Dice(std::uint64_t seed, std::uint64_t number) : state_{Dice{seed ^ Dice{number}.next()}.next()} {}

  std::uint64_t next() {
    std::uint64_t mixed = (state_ += 0x9e3779b97f4a7c15);
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111eb;
    return mixed ^ (mixed >> 31);
  }
  /// From 0 up to, but not, 1.
  double part() { return static_cast<double>(next() >> 11) * 0x1p-53; }
  double between(double low, double high) { return low + (high - low) * part(); }
  /// Less than `count`, which is not 0; uneven by less than `count` in 2^53.
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(part() * static_cast<double>(count)); }
  bool hits(double chance) { return part() < chance; }

 private:
  std::uint64_t state_;
};

}  // namespace yardwright::grow
