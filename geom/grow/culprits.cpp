#include "geom/grow/culprits.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace yardwright::grow {

namespace {

/// Only those that must go: each is tried to be left, the first placed first.
std::vector<ItemId> pruned(std::vector<ItemId> gone, const HasWithout& has) {
  for (std::size_t i = 0; i < gone.size() && gone.size() > 1;) {
    std::vector<ItemId> fewer = gone;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    if (has(fewer))
      gone = std::move(fewer);
    else
      ++i;
  }
  return gone;
}

}  // namespace

int latest_phase(const Site& site) {
  int latest = 0;
  for (const Item& item : site.items) latest = std::max(latest, item.phase);
  return latest;
}

std::vector<ItemId> culprits_among(const std::vector<ItemId>& placed, const HasWithout& has) {
  if (placed.empty() || !has(placed)) return {};
  for (std::size_t i = placed.size(); i-- > 0;) {
    if (has({placed[i]})) return {placed[i]};
  }
  return pruned(placed, has);
}

std::string titles_of(const Site& site, const std::vector<ItemId>& items) {
  const auto title = [&](std::size_t i) { return title_of(*find(site, items[i])); };
  if (items.empty()) return "";
  if (items.size() == 1) return title(0);
  if (items.size() == 2) return title(0) + " and " + title(1);
  return fmt::format("{}, {} and {} more", title(0), title(1), items.size() - 2);
}

}  // namespace yardwright::grow
