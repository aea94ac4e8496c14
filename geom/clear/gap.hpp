// One judged distance, and the form that every check of Clear has: the tightest gap of one solid. The mends ask
// the same checks about a yard in which something has moved.
#pragma once

#include <functional>
#include <string>

#include "geom/clear/solid.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::clear {

struct Gap {
  const Rule* rule = nullptr;
  double measured_m = 0;
  double required_m = 0;  ///< the rule's own value, or what follows from it
  ItemId of, to;          ///< `to` is 0 where it is no item but a lot edge or the thing itself
  NearestPair pair;       ///< from a point of `of` to one of `to`
  Verdict worse = Verdict::fail;
  bool in_the_open = false;  ///< nothing stands at the end of `pair`, it is only looked that far
  double margin_m() const { return measured_m - required_m; }
};

/// Distances within this of a limit count as kept: typed feet are not exact in metres.
inline constexpr double hair_m = 1e-6;
inline bool keeps(const Gap& gap) { return gap.margin_m() >= -hair_m; }

/// The gap of two solids, whichever of them the rule is about; nothing where the rule is not about them, or where
/// their boxes show that the margin is not below `below_m`.
using BetweenTwo = std::function<std::optional<Gap>(const Solid&, const Solid&, const Yard&, double below_m)>;

/// The gap of a solid to one overhead line; nothing where the check is not about that solid.
using ToLine = std::function<std::optional<Gap>(const Solid&, const Item& line, const Yard&)>;

struct Check {
  /// The gap with the smallest margin below `below_m`, if any.
  std::function<std::optional<Gap>(const Solid&, const Yard&, double below_m)> tightest;
  std::string passes;  ///< title where everything keeps its distance
  std::string breaks;  ///< "stands too near to"
  std::string note;    ///< where it does not
  bool says_pass = true;
  BetweenTwo between{};     ///< where what is asked of two solids does not depend on where they stand
  ToLine to_line{};         ///< where it is about overhead lines
  Parts starts_from = ~0u;  ///< the solids that a round of the yard asks for; mends ask for any
};

/// The tightest of a solid against every other.
std::optional<Gap> tightest_of(const Solid& solid, const Yard& yard, double below_m, const BetweenTwo& between);

}  // namespace yardwright::clear
