// The least of a change that passes a check, by halving between one that does not pass and one that does.
#pragma once

#include <functional>
#include <optional>
#include <stop_token>

namespace yardwright::turn {

/// Whether there is time to look for least changes, each of which drives the route many times over.
class MendSearch {
 public:
  explicit MendSearch(bool wanted, std::stop_token stop = {}) : wanted_{wanted}, stop_{std::move(stop)} {}
  /// Remembers that something was left unsought where the answer is no.
  bool may_seek() {
    const bool may = wanted_ && !stop_.stop_requested();
    left_some_ |= !may;
    return may;
  }
  bool left_some() const { return left_some_; }

 private:
  bool wanted_;
  std::stop_token stop_;
  bool left_some_ = false;
};

/// The least size in (0, most] that passes, to `exact`; it passes itself. Nothing where none of the sizes tried does.
/// Sizes are first tried doubling from most/64, so that the first window of passing sizes is the one found.
std::optional<double> least_that_passes(double most, double exact, const std::function<bool(double)>& passes);

}  // namespace yardwright::turn
