// What works cost: the shipped book is invented and says so; a yard's own takes its place. Money is in the book's
// currency, and nothing is converted. docs/methods/grow.md
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "geom/site/catalog/work.hpp"

namespace yardwright {

struct Price {
  Work work = Work::bin;
  std::vector<double> size_m;  ///< of one size alone; empty: of every size without a price of its own
  double price = 0;            ///< for one `per`
  std::string per;             ///< "each", or a unit of the work's amount: "bu", "ft", "yd3"
  double per_si = 0;           ///< how much that is; 0 for each
  std::string source;
  bool operator==(const Price&) const = default;
};

struct PriceBook {
  std::string name;
  std::string date;
  std::string currency;
  bool invented = false;
  std::vector<Price> prices;
  bool operator==(const PriceBook&) const = default;
};

/// The price of that size, else of the work; null where the book has none.
inline const Price* price_of(const PriceBook& book, Work work, const std::vector<double>& size_m) {
  const auto find = [&](const std::vector<double>& size) -> const Price* {
    const auto found = std::ranges::find_if(
        book.prices, [&](const Price& price) { return price.work == work && same_size(price.size_m, size); });
    return found == book.prices.end() ? nullptr : &*found;
  };
  const Price* of_size = find(size_m);
  return of_size != nullptr || size_m.empty() ? of_size : find({});
}

}  // namespace yardwright
