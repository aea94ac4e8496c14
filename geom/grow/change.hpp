// A change that mends a finding: one mend, or two that do so together, with what it is worth and what it would break.
#pragma once

#include <optional>

#include "geom/grow/prover.hpp"

namespace yardwright::grow {

struct Change {
  std::vector<Mend> mends;  ///< done in this order
  double effort_m = 0;      ///< see effort.hpp
  Findings breaks;          ///< worse for it; of a proven one none

  bool is_proven() const { return breaks.empty(); }
  Edits edits() const;
};

/// "raise Leg by 4.0 ft to 94.0 ft, and move North 2 west by 3.1 ft".
std::string change_words(const Change& change, UnitSystem units);

/// What was found for one finding: each mends it.
struct Found {
  std::optional<Change> least;    ///< proven
  std::vector<Change> harmful{};  ///< those that break something else

  /// Keeps the one that is worth less.
  void offer(Change proven);
  bool is_beaten_by(double effort_m) const { return !least || effort_m < least->effort_m; }
};

}  // namespace yardwright::grow
