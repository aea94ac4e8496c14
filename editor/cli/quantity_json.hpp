// Quantities and their cost as JSON: amounts in SI with their unit, every line with the items that it is made of.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "geom/grow/cost.hpp"

namespace yardwright::cli {

nlohmann::ordered_json as_json(const grow::QuantityLine& line);
/// A list of its lines; what has no price has null for price and sum.
nlohmann::ordered_json as_json(const grow::Cost& cost);
/// Its head, without the prices.
nlohmann::ordered_json as_json(const PriceBook& book);

}  // namespace yardwright::cli
