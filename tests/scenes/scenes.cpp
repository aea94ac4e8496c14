#include "tests/scenes/scenes.hpp"

namespace yardwright::scenes {

Site one_bin_yard(double outlet_ft, double run_ft) {
  Site site;
  site.lot = rectangular_lot(200 * ft, 200 * ft);
  const Leg leg{.discharge_height_m = outlet_ft * ft, .distributor_drop_m = 0};
  const Bin bin{.at = {run_ft * ft, 0},
                .diameter_m = 36 * ft,
                .eave_height_m = 24 * ft,
                .foundation_height_m = 1 * ft,
                .inlet_over_peak_m = 0};
  site.items = {{leg_id, "Leg 1", 0, std::nullopt, leg},
                {bin_id, "North 1", 0, std::nullopt, bin},
                {spout_id, "", 0, std::nullopt, Spout{.from = leg_id, .to = bin_id}}};
  return site;
}

}  // namespace yardwright::scenes
