// The known word that a mistyped one was most likely meant to be, for "did you mean".
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace yardwright {

/// The choice with the fewest letters changed, added or dropped; empty where none is near enough to suggest.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> choices);

/// "did you mean \"diameter\"?", or "use one of a, b, c" where nothing is near.
std::string suggestion(std::string_view word, std::span<const std::string_view> choices);

}  // namespace yardwright
