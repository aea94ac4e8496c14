// What is wanted of a yard that is to grow: how much more storage, by which sizes of bins, legs how tall, for how much money.
// Lengths in metres, grain in cubic metres, money in the currency of the price book. docs/methods/grow.md
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace yardwright {

struct BinSize {
  double diameter_m = 0;
  double eave_height_m = 0;
  bool operator==(const BinSize&) const = default;
};

struct GrowthBrief {
  double wanted_m3 = 0;               ///< of dry storage more, heaped and packed
  std::string grain{};                ///< id in the catalogue; empty: that of the bin placed last
  std::vector<BinSize> bins{};        ///< sizes that may be built, the same one more than once
  std::vector<double> discharge_m{};  ///< heights to which a leg may be raised; each may stay as it is too
  int outlets = 24;                   ///< of the distributor on a leg that is raised
  int most_bins = 12;
  std::optional<double> budget{};  ///< none: as much as it takes
  bool bears_advice = false;       ///< whether cautions are borne: else all that is new passes
  bool operator==(const GrowthBrief&) const = default;
};

/// What a brief can ask for at most.
inline constexpr std::size_t most_bin_sizes = 12, most_leg_heights = 12;
inline constexpr int most_bins_of_brief = 40;

}  // namespace yardwright
