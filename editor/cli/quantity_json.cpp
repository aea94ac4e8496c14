#include "editor/cli/quantity_json.hpp"

#include <nlohmann/json.hpp>

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

Json price_json(const Price& price) { return {{"price", price.price}, {"per", price.per}, {"source", price.source}}; }

}  // namespace

Json as_json(const grow::QuantityLine& line) {
  const WorkMeasure& measure = measure_of(line.work);
  Json out{{"work", names_of(Work{})[static_cast<std::size_t>(line.work)]},
           {"words", measure.words},
           {"size_m", line.size_m},
           {"count", line.count()},
           {"amount", line.amount()},
           {"unit", units_of(measure.quantity).front().suffix},
           {"parts", Json::array()}};
  for (const grow::QuantityPart& part : line.parts) {
    Json items = Json::array();
    for (const ItemId id : part.items) items.push_back(id.number);
    out["parts"].push_back({{"items", std::move(items)}, {"count", part.count}, {"amount", part.amount}});
  }
  return out;
}

Json as_json(const grow::Cost& cost) {
  Json lines = Json::array();
  for (const grow::CostLine& line : cost.lines) {
    Json out = as_json(line.line);
    out["price"] = line.price ? price_json(*line.price) : Json{};
    out["sum"] = line.sum ? Json(*line.sum) : Json{};
    lines.push_back(std::move(out));
  }
  return lines;
}

Json as_json(const PriceBook& book) {
  return {{"name", book.name}, {"date", book.date}, {"currency", book.currency}, {"invented", book.invented}};
}

}  // namespace yardwright::cli
