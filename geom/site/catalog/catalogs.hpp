// Everything that the questions look up rather than read from the site: the rule book and the catalogues.
#pragma once

#include <string_view>
#include <vector>

#include "geom/site/catalog/grain.hpp"
#include "geom/site/catalog/ground_cover.hpp"
#include "geom/site/catalog/storm_curve.hpp"
#include "geom/site/catalog/vehicle.hpp"
#include "geom/site/rule.hpp"

namespace yardwright {

struct Catalogs {
  RuleBook rules;
  std::vector<Vehicle> vehicles;
  std::vector<Grain> grains;
  std::vector<GroundCover> covers;
  std::vector<StormCurve> storms;
};

/// The record with this id, or null: catalogue ids come from files, so a missing one is the caller's Finding.
template <class Record>
const Record* find(const std::vector<Record>& records, std::string_view id) {
  for (const Record& record : records) {
    if (record.id == id) return &record;
  }
  return nullptr;
}

}  // namespace yardwright
