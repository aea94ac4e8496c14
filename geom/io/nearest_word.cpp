#include "geom/io/nearest_word.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <numeric>
#include <vector>

namespace yardwright {

namespace {

constexpr std::size_t longest_compared = 60;

/// Levenshtein's distance: letters to change, add or drop.
std::size_t letters_apart(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i] == b[j] ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({row[j] + 1, row[j + 1] + 1, changed});
    }
  }
  return row.back();
}

}  // namespace

std::string_view nearest_word(std::string_view word, std::span<const std::string_view> choices) {
  if (word.size() > longest_compared) return {};
  std::string_view nearest;
  // Of three letters one may differ, of more two, of many half of them.
  std::size_t least = word.size() <= 3 ? 2 : std::max<std::size_t>(2, word.size() / 2) + 1;
  for (const std::string_view choice : choices) {
    const std::size_t apart = letters_apart(word, choice);
    if (apart >= least) continue;
    least = apart;
    nearest = choice;
  }
  return nearest;
}

std::string suggestion(std::string_view word, std::span<const std::string_view> choices) {
  const std::string_view nearest = nearest_word(word, choices);
  if (!nearest.empty()) return fmt::format("did you mean \"{}\"?", nearest);
  return fmt::format("use one of {}", fmt::join(choices, ", "));
}

}  // namespace yardwright
