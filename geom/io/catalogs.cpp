#include "geom/io/catalogs.hpp"

#include "geom/io/cover_catalog.hpp"
#include "geom/io/grain_catalog.hpp"
#include "geom/io/rule_book.hpp"
#include "geom/io/storm_catalog.hpp"
#include "geom/io/vehicle_catalog.hpp"

namespace yardwright {

const Catalogs& shipped_catalogs() {
  static const Catalogs catalogs{shipped_rule_book(), shipped_vehicles(), shipped_grains(), shipped_covers(),
                                 shipped_storms()};
  return catalogs;
}

}  // namespace yardwright
