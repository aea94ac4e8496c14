#include "editor/cli/site_place.hpp"

#include "geom/units/text.hpp"

namespace yardwright::cli {

Expected<SitePoint> site_place(const std::string& text, const char* option, UnitSystem units) {
  return pair_of(text, option, "give east and north of the site's origin: 36ft,11m",
                 [units](const std::string& part) -> std::optional<double> {
                   const auto value = parse_quantity(part, Quantity::length, units);
                   return value ? std::optional{*value} : std::nullopt;
                 });
}

}  // namespace yardwright::cli
