#include "geom/sheet/quantity_tables.hpp"

#include <fmt/format.h>

namespace yardwright {

namespace {

constexpr std::string_view by_rules =
    "Of all that is drawn, what stands already included. Concrete and gravel by the thicknesses of the rules, for "
    "counting alone: the engineer's drawing decides.";

/// What of a line is built after the first phase; of earth it is not told.
std::string later_words(const grow::QuantityLine& line, const Site& site) {
  if (is_earth(line.work)) return "–";
  grow::QuantityLine later = line;
  std::erase_if(later.parts, [&](const grow::QuantityPart& part) {
    const Item* item = find(site, part.items.front());
    return item == nullptr || item->phase == 0;
  });
  return later.parts.empty() ? "–" : grow::amount_words(later, {}, site.units);
}

Table quantity_table(const Site& site, const grow::Quantities& found) {
  Table table{"Quantities", std::string{by_rules}, {}, {}};
  const std::string first = site.phases.empty() ? "existing" : site.phases.front();
  table.columns = {{"work", 2.6},
                   {"size", 1.4},
                   {"count", 0.7, Anchor::right},
                   {"amount", 1.3, Anchor::right},
                   {"of it after \"" + first + "\"", 1.5, Anchor::right},
                   {"made of", 5}};
  for (const grow::QuantityLine& line : found.lines)
    table.rows.push_back({{std::string{measure_of(line.work).words}, true},
                          {grow::size_words(line, site.units)},
                          {std::to_string(line.count())},
                          {grow::amount_words(line, {}, site.units)},
                          {later_words(line, site)},
                          {grow::item_words(line, site), false, palette::quiet_ink}});
  return table;
}

Table cost_table(const Site& site, const grow::Cost& cost, const PriceBook& book) {
  Table table{"Cost", "Prices: " + grow::book_words(book) + ". What has no price is in no sum.", {}, {}};
  table.columns = {{"work", 3},
                   {"size", 1.6},
                   {"amount", 1.3, Anchor::right},
                   {"price", 1.6, Anchor::right},
                   {book.currency, 1.5, Anchor::right}};
  for (const grow::CostLine& line : cost.lines)
    table.rows.push_back(
        {{std::string{measure_of(line.line.work).words}, true},
         {grow::size_words(line.line, site.units)},
         {line.price && line.price->per_si == 0 ? std::to_string(line.line.count())
                                                : grow::amount_words(line.line, line.price, site.units)},
         {grow::price_words(line.price, book)},
         {grow::sum_words(line.sum)}});
  table.rows.push_back({{"sum", true}, {""}, {""}, {""}, {grow::total_words(cost, book), true}});
  return table;
}

Table left_out_table(const Site& site, const grow::Quantities& found) {
  Table table{"", "", {{"not counted", 1}}, {}};
  for (const grow::LeftOut& one : found.left_out)
    table.rows.push_back({{grow::left_out_words(one, site), false, palette::caution, Verdict::not_checked}});
  return table;
}

}  // namespace

std::vector<Table> quantity_tables(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                   const std::optional<PriceBook>& prices) {
  const grow::Quantities found = grow::quantities(site, surface, catalogs);
  if (found.lines.empty() && found.left_out.empty()) return {};
  std::vector<Table> tables{quantity_table(site, found)};
  const bool priced = prices && !prices->invented;
  if (!priced)
    tables.front().note +=
        " No cost is told: the yard has no price book of its own, and the shipped prices are invented.";
  if (!found.left_out.empty()) tables.push_back(left_out_table(site, found));
  if (priced) tables.push_back(cost_table(site, grow::cost_of(found, *prices), *prices));
  return tables;
}

}  // namespace yardwright
