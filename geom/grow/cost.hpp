// What quantities cost by a price book. A work without a price is told as such and never counted as nothing; the sum is of
// what has a price. docs/methods/grow.md
#pragma once

#include <optional>

#include "geom/grow/quantities.hpp"
#include "geom/site/catalog/price_book.hpp"

namespace yardwright::grow {

struct CostLine {
  QuantityLine line;
  std::optional<Price> price;
  std::optional<double> sum;  ///< in the book's currency
};

struct Cost {
  std::vector<CostLine> lines;
  double sum = 0;
  int without_price = 0;
};

Cost cost_of(const Quantities& quantities, const PriceBook& book);

/// "36 ft x 24 ft"; empty for what has no sizes.
std::string size_words(const QuantityLine& line, UnitSystem units);
/// "43,400 bu", in the unit of its price where it has one, else as the trade speaks of it; "2" of what is only counted.
std::string amount_words(const QuantityLine& line, const std::optional<Price>& price, UnitSystem units);
/// "2.60 USD/bu"; "no price".
std::string price_words(const std::optional<Price>& price, const PriceBook& book);
/// "138,880"; "no price".
std::string sum_words(const std::optional<double>& sum);
/// "138,880 USD and 2 works without a price"
std::string total_words(const Cost& cost, const PriceBook& book);
/// "invented prices, to be replaced by your own quotes (2025-01-01, USD)"
std::string book_words(const PriceBook& book);
/// "South 1: its grain is not known ..."
std::string left_out_words(const LeftOut& left_out, const Site& site);
/// "South 1, South 2"
std::string item_words(const QuantityLine& line, const Site& site);

}  // namespace yardwright::grow
