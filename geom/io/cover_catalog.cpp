#include "geom/io/cover_catalog.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

std::vector<GroundCover> shipped_covers() {
  std::vector<GroundCover> covers;
  for (const auto& record : asset_json("covers.json").at("covers")) {
    covers.push_back({record.at("id"), record.at("name"), record.at("curve-number").get<std::array<double, 4>>(),
                      record.at("rational-c"), record.at("sheet-n"), record.at("source")});
  }
  return covers;
}

}  // namespace yardwright
