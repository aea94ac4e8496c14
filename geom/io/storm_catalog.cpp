#include "geom/io/storm_catalog.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

std::vector<StormCurve> shipped_storms() {
  std::vector<StormCurve> storms;
  const nlohmann::json file = asset_json("storms.json");
  for (const auto& record : file.at("storms")) {
    StormCurve storm{asset_enum<StormType>(record.at("type")), {}, record.at("source")};
    const double step_s = asset_quantity(record.at("step"), Quantity::duration);
    for (const auto& fallen : record.at("fallen"))
      storm.curve.points.push_back({static_cast<double>(storm.curve.points.size()) * step_s, fallen.get<double>()});
    storms.push_back(std::move(storm));
  }
  return storms;
}

}  // namespace yardwright
