// Whether there is time to look for the mends that take long: those that must drive a route or flood the ground again
// for every size they try. While something is dragged they are left for later.
#pragma once

#include <stop_token>

namespace yardwright {

class MendSearch {
 public:
  /// Looks for all of them.
  MendSearch() = default;
  explicit MendSearch(bool wanted, std::stop_token stop = {}) : wanted_{wanted}, stop_{std::move(stop)} {}

  /// Remembers that something was left unsought where the answer is no.
  bool may_seek() {
    const bool may = wanted_ && !stop_.stop_requested();
    left_some_ |= !may;
    return may;
  }
  bool left_some() const { return left_some_; }

 private:
  bool wanted_ = true;
  std::stop_token stop_;
  bool left_some_ = false;
};

}  // namespace yardwright
