#include "geom/io/rule_book.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

namespace {

Quantity quantity_named(const std::string& name) {
  constexpr std::pair<std::string_view, Quantity> names[] = {{"ratio", Quantity::ratio},
                                                             {"count", Quantity::count},
                                                             {"length", Quantity::length},
                                                             {"small-length", Quantity::small_length},
                                                             {"area", Quantity::area},
                                                             {"volume", Quantity::volume},
                                                             {"grain-volume", Quantity::grain_volume},
                                                             {"flow", Quantity::flow},
                                                             {"speed", Quantity::speed},
                                                             {"angle", Quantity::angle},
                                                             {"grade", Quantity::grade},
                                                             {"duration", Quantity::duration},
                                                             {"voltage", Quantity::voltage},
                                                             {"rain-depth", Quantity::rain_depth},
                                                             {"tank-volume", Quantity::tank_volume}};
  for (const auto& [key, quantity] : names) {
    if (key == name) return quantity;
  }
  throw std::runtime_error{"rules.json names an unknown quantity " + name};
}

}  // namespace

RuleBook shipped_rule_book() {
  std::vector<Rule> rules;
  const nlohmann::json file = asset_json("rules.json");
  for (const auto& record : file.at("rules")) {
    Rule rule;
    rule.id = record.at("id");
    rule.label = record.at("label");
    rule.quantity = quantity_named(record.at("quantity"));
    rule.value = asset_quantity(record.at("value"), rule.quantity);
    rule.basis = asset_enum<Basis>(record.at("basis"));
    rule.source = record.at("source");
    rules.push_back(std::move(rule));
  }
  return RuleBook{std::move(rules)};
}

}  // namespace yardwright
