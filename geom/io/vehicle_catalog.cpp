#include "geom/io/vehicle_catalog.hpp"

#include "geom/io/asset_json.hpp"

namespace yardwright {

namespace {

double metres(const nlohmann::json& record, const char* key) {
  return record.contains(key) ? asset_quantity(record.at(key), Quantity::length) : 0.0;
}

Angle degrees(const nlohmann::json& record, const char* key) {
  return Angle::degrees(asset_quantity(record.at(key), Quantity::angle));
}

VehicleUnit unit_from(const nlohmann::json& record) {
  return {record.at("name"),
          metres(record, "wheelbase"),
          metres(record, "hitch"),
          metres(record, "front-overhang"),
          metres(record, "rear-overhang"),
          metres(record, "width"),
          metres(record, "height")};
}

}  // namespace

std::vector<Vehicle> shipped_vehicles() {
  std::vector<Vehicle> vehicles;
  const nlohmann::json file = asset_json("vehicles.json");
  for (const auto& record : file.at("vehicles")) {
    Vehicle vehicle;
    vehicle.id = record.at("id");
    vehicle.name = record.at("name");
    for (const auto& unit : record.at("units")) vehicle.units.push_back(unit_from(unit));
    vehicle.least_front_radius_m = metres(record, "least-front-radius");
    if (record.contains("greatest-hitch-angle")) vehicle.greatest_hitch_angle = degrees(record, "greatest-hitch-angle");
    if (record.contains("bed")) {
      const auto& bed = record.at("bed");
      vehicle.bed =
          RaisedBed{metres(bed, "hinge-height"), metres(bed, "length"), metres(bed, "wall"), degrees(bed, "angle")};
    }
    vehicle.source = record.at("source");
    vehicles.push_back(std::move(vehicle));
  }
  return vehicles;
}

}  // namespace yardwright
