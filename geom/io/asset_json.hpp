// What the catalogue readers share: a shipped file as JSON, and values typed with their units ("36 ft").
#pragma once

#include <nlohmann/json.hpp>
#include <string_view>

#include "geom/units/quantity.hpp"

namespace yardwright {

nlohmann::json asset_json(std::string_view name);

/// A number in SI, or text with its unit.
double asset_quantity(const nlohmann::json& value, Quantity quantity);

/// The enum value with this name in names_of().
template <class Enum>
Enum asset_enum(const nlohmann::json& value) {
  const auto names = names_of(Enum{});
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (names[i] == value.get<std::string>()) return static_cast<Enum>(i);
  }
  throw std::runtime_error{"a shipped catalogue says " + value.dump()};
}

}  // namespace yardwright
