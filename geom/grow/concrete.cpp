#include "geom/grow/concrete.hpp"

#include <algorithm>
#include <numbers>

#include "geom/shape/path.hpp"

namespace yardwright::grow {

namespace {

double machine_slab_m3(double length_m, double width_m, const RuleBook& rules) {
  const double beyond_m = 2 * rules.at("grow.machine-slab-beyond").value;
  return (length_m + beyond_m) * (width_m + beyond_m) * rules.at("grow.machine-slab").value;
}

}  // namespace

double foundation_m3(const Bin& bin, const RuleBook& rules) {
  const double slab_m = rules.at("grow.bin-slab").value;
  const double across_m = bin.diameter_m + 2 * rules.at("grow.bin-slab-beyond").value;
  const double ring_m = std::max(0.0, bin.foundation_height_m + rules.at("grow.bin-ring-depth").value - slab_m);
  return std::numbers::pi *
         (across_m * across_m / 4 * slab_m + bin.diameter_m * rules.at("grow.bin-ring-width").value * ring_m);
}

double slab_m3(const Dryer& dryer, const RuleBook& rules) {
  return machine_slab_m3(dryer.length_m, dryer.width_m, rules);
}

double slab_m3(const OverheadHolding& bin, const RuleBook& rules) {
  return machine_slab_m3(bin.stand_width_m, bin.stand_width_m, rules);
}

double floor_m3(const Receiving& receiving, const RuleBook& rules) {
  const double hole_m2 = receiving.pit.depth_m > 0 ? receiving.pit.width_m * receiving.pit.length_m : 0;
  return std::max(0.0, receiving.length_m * receiving.width_m - hole_m2) * rules.at("grow.receiving-floor").value;
}

double shell_m3(const PitBody& pit, const RuleBook& rules) {
  if (!(pit.depth_m > 0)) return 0;
  const double wall_m = rules.at("drain.pit-wall").value;
  const double outside_m2 = (pit.width_m + 2 * wall_m) * (pit.length_m + 2 * wall_m);
  return (outside_m2 - pit.width_m * pit.length_m) * (pit.depth_m + pit.rim_height_m) +
         outside_m2 * rules.at("drain.pit-floor").value;
}

double shell_m3(const Tunnel& tunnel, const RuleBook& rules) {
  const double wall_m = rules.at("drain.pit-wall").value, floor_m = rules.at("drain.pit-floor").value;
  const double section_m2 = (tunnel.width_m + 2 * wall_m) * (tunnel.height_m + wall_m + floor_m);
  return (section_m2 - tunnel.width_m * tunnel.height_m) * length(tunnel.path);
}

}  // namespace yardwright::grow
