#include "geom/io/cover_catalog.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

std::vector<GroundCover> shipped_covers() {
  std::vector<GroundCover> covers;
  const nlohmann::json file = asset_json("covers.json");
  for (const auto& record : file.at("covers")) {
    covers.push_back({record.at("id"), record.at("name"), record.at("curve-number").get<std::array<double, 4>>(),
                      record.at("rational-c"), record.at("sheet-n"), record.at("source")});
  }
  return covers;
}

}  // namespace yardwright
