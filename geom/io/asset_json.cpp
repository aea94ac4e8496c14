#include "geom/io/asset_json.hpp"

#include <stdexcept>

#include "assets/assets.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

nlohmann::json asset_json(std::string_view name) {
  const std::string_view text = asset(name);
  if (text.empty()) throw std::runtime_error{"the shipped file " + std::string{name} + " is missing"};
  return nlohmann::json::parse(text);
}

double asset_quantity(const nlohmann::json& value, Quantity quantity) {
  if (value.is_number()) return value.get<double>();
  const auto parsed = parse_quantity(value.get<std::string>(), quantity, UnitSystem::metric);
  if (!parsed) throw std::runtime_error{"a shipped catalogue says " + value.dump() + ": " + sentence(parsed.error())};
  return *parsed;
}

}  // namespace yardwright
