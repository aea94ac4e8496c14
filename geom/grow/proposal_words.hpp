// Proposals in words, the same for the command line and whoever else tells of them. docs/methods/grow.md
#pragma once

#include <string>

#include "geom/grow/proposals.hpp"

namespace yardwright::grow {

/// "14 m x 8.8 m".
std::string bin_size_words(const BinSize& size, UnitSystem units);
/// "40,000 bu more, by bins of 36 ft x 24 ft; Leg may be raised to 120 ft; for 300,000 USD at most".
std::string brief_words(const GrowthTask& task);
/// "raise Leg by 9.0 ft to 140.0 ft"; "legs as they are".
std::string leg_words(const GrowthTask& task, const Layout& layout);
/// "2 bins of 36 ft x 24 ft, 1 bin of 48 ft x 29 ft".
std::string bins_words(const GrowthTask& task, const Layout& layout);
/// "421,811 USD"; and what is in no sum.
std::string cost_words(const GrowthTask& task, const LayoutMeasures& measures);
/// "66% over what is asked"; "12% short of advice".
std::string safety_words(const LayoutMeasures& measures);
/// "5,200 bu short of what is wanted"; empty where it meets the brief.
std::string short_words(const GrowthTask& task, const Proposal& proposal);

}  // namespace yardwright::grow
