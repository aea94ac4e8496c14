#include "geom/drain/storm/storm_words.hpp"

#include <fmt/format.h>

namespace yardwright::drain::storm {

std::string mishap_words(const Site& site, const StormOptions& options) {
  switch (options.mishap) {
    case Mishap::power_fails: return "the power fails: no pump runs";
    case Mishap::inlets_half_blocked: return "culverts and grates are half blocked";
    case Mishap::tiles_full: return "the tile lines are full and take nothing";
    case Mishap::pump_fails: {
      const Item* item = find(site, options.failed_pump);
      return item == nullptr ? "a pump fails" : "the pump of " + title_of(*item) + " fails";
    }
    case Mishap::none: break;
  }
  return "everything works";
}

std::string hour_words(double time_s) { return fmt::format("hour {:.1f}", time_s / 3600); }

std::string hour_words(std::optional<double> time_s, double end_s) {
  return time_s ? hour_words(*time_s) : "not by " + hour_words(end_s);
}

}  // namespace yardwright::drain::storm
