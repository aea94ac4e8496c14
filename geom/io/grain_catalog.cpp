#include "geom/io/grain_catalog.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

std::vector<Grain> shipped_grains() {
  std::vector<Grain> grains;
  const nlohmann::json file = asset_json("grains.json");
  for (const auto& record : file.at("grains")) {
    grains.push_back({record.at("id"), record.at("name"), record.at("test-weight-lb-per-bu"),
                      Angle::degrees(record.at("filling-deg")), Angle::degrees(record.at("emptying-deg")),
                      record.at("source")});
  }
  return grains;
}

}  // namespace yardwright
