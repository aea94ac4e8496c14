#include "geom/grow/cost.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

constexpr double whole_from = 1000;  // money is told without cents from here on

std::string money_text(double money) { return number_text(money, money < whole_from ? 2 : 0); }

double sum_of(const QuantityLine& line, const Price& price) {
  return price.price * (price.per_si > 0 ? line.amount() / price.per_si : line.count());
}

const Unit& unit_for(const QuantityLine& line, const std::optional<Price>& price, UnitSystem units) {
  const Quantity quantity = measure_of(line.work).quantity;
  const Unit* priced = price && price->per_si > 0 ? unit_typed(price->per, quantity) : nullptr;
  return priced != nullptr ? *priced : trade_unit(line.work, units);
}

}  // namespace

Cost cost_of(const Quantities& quantities, const PriceBook& book) {
  Cost cost;
  for (const QuantityLine& line : quantities.lines) {
    CostLine out{line, {}, {}};
    if (const Price* price = price_of(book, line.work, line.size_m)) {
      out.price = *price;
      out.sum = sum_of(line, *price);
      cost.sum += *out.sum;
    } else {
      ++cost.without_price;
    }
    cost.lines.push_back(std::move(out));
  }
  return cost;
}

std::string size_words(const QuantityLine& line, UnitSystem units) { return size_text(line.work, line.size_m, units); }

std::string amount_words(const QuantityLine& line, const std::optional<Price>& price, UnitSystem units) {
  return text_in(line.amount(), unit_for(line, price, units));
}

std::string price_words(const std::optional<Price>& price, const PriceBook& book) {
  if (!price) return "no price";
  if (price->per_si > 0) return fmt::format("{} {}/{}", money_text(price->price), book.currency, price->per);
  return fmt::format("{} {} each", money_text(price->price), book.currency);
}

std::string sum_words(const std::optional<double>& sum) { return sum ? money_text(*sum) : "no price"; }

std::string total_words(const Cost& cost, const PriceBook& book) {
  const bool some = cost.without_price < static_cast<int>(cost.lines.size());
  const std::string without =
      fmt::format("{} work{} without a price", cost.without_price, cost.without_price == 1 ? "" : "s");
  if (!some && cost.without_price > 0) return without;
  const std::string sum = fmt::format("{} {}", money_text(cost.sum), book.currency);
  return cost.without_price == 0 ? sum : fmt::format("{}, and {}", sum, without);
}

std::string book_words(const PriceBook& book) {
  const std::string name = book.name.empty() ? "prices" : book.name;
  const std::string_view warning = "invented prices, to be replaced by your own quotes";
  const bool told = !book.invented || name.find(warning) != std::string::npos;
  return fmt::format("{}{} ({}, {})", name, told ? "" : fmt::format(": {}", warning), book.date, book.currency);
}

std::string left_out_words(const LeftOut& left_out, const Site& site) {
  const Item* item = find(site, left_out.item);
  return item == nullptr ? left_out.why : title_of(*item) + ": " + left_out.why;
}

std::string item_words(const QuantityLine& line, const Site& site) {
  std::vector<std::string> names;
  for (const QuantityPart& part : line.parts) {
    for (const ItemId id : part.items) {
      const Item* item = find(site, id);
      names.push_back(item == nullptr ? fmt::format("item {}", id.number) : title_of(*item));
    }
  }
  return fmt::format("{}", fmt::join(names, ", "));
}

}  // namespace yardwright::grow
