#include "geom/site/item.hpp"

#include <fmt/format.h>

#include <utility>

namespace yardwright {

std::string_view kind_key(const Thing& thing) {
  return std::visit([](const auto& kind) { return kind.key; }, thing);
}

std::string_view kind_label(const Thing& thing) {
  return std::visit([](const auto& kind) { return kind.label; }, thing);
}

std::vector<Thing> every_kind() {
  return []<std::size_t... index>(std::index_sequence<index...>) {
    return std::vector<Thing>{Thing{std::in_place_index<index>}...};
  }
  (std::make_index_sequence<std::variant_size_v<Thing>>{});
}

std::optional<Thing> thing_of_kind(std::string_view key) {
  for (Thing& thing : every_kind()) {
    if (kind_key(thing) == key) return std::move(thing);
  }
  return std::nullopt;
}

std::string title_of(const Item& item) {
  return item.name.empty() ? fmt::format("{} {}", kind_label(item.thing), item.id.number) : item.name;
}

}  // namespace yardwright
