// The least of a change that passes a check, by halving between one that does not pass and one that does.
#pragma once

#include <functional>
#include <optional>

namespace yardwright::turn {

/// The least size in (0, most] that passes, to `exact`; it passes itself. Nothing where none of the sizes tried does.
/// Sizes are first tried doubling from most/64, so that the first window of passing sizes is the one found.
std::optional<double> least_that_passes(double most, double exact, const std::function<bool(double)>& passes);

/// The same where only narrow windows of sizes may pass: tried in steps that grow by a quarter from most/64.
std::optional<double> least_in_small_steps(double most, double exact, const std::function<bool(double)>& passes);

}  // namespace yardwright::turn
