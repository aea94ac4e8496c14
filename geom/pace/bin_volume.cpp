#include "geom/pace/bin_volume.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardwright::pace {

namespace {

using std::numbers::pi;

/// Grain as a thickness over the floor: apex_m at the centre, falling by `fall` a metre outward, up to the wall.
/// A hopper's slope is part of `fall`, since the thickness over it shrinks outward as the floor rises.
struct Heap {
  double radius_m;
  double apex_m;
  double fall;

  double base_radius_m() const { return fall * radius_m > apex_m ? apex_m / fall : radius_m; }
  double wall_m() const { return std::max(0.0, apex_m - fall * radius_m); }
  /// From the centre out to a radius within its base.
  double volume_m3(double to_m) const { return pi * to_m * to_m * apex_m - 2 * pi / 3 * fall * to_m * to_m * to_m; }
  double volume_m3() const { return volume_m3(base_radius_m()); }
};

/// Under a cone that rises by `rise` a metre from the rim of the sump, out to a radius.
double under_crater_m3(double rise, double sump_m, double to_m) {
  const double r = to_m, s = std::min(sump_m, to_m);
  return pi * rise * (2.0 / 3.0 * (r * r * r - s * s * s) - s * (r * r - s * s));
}

struct Drawn {
  double stays_m3 = 0;
  double crater_m = 0;
  Remainder remainder = Remainder::none;
};

Drawn drawn_by_sump(const Heap& heap, double rise, double sump_m) {
  const double total_m3 = heap.volume_m3();
  const double sump_inside_m = std::min(sump_m, heap.radius_m);
  if (rise <= 0 || total_m3 <= 0) return {0, heap.base_radius_m(), Remainder::none};
  if (heap.wall_m() >= rise * (heap.radius_m - sump_inside_m)) {
    return {under_crater_m3(rise, sump_inside_m, heap.radius_m), heap.radius_m, Remainder::ring};
  }
  const double meets_m = (heap.apex_m + rise * sump_inside_m) / (rise + heap.fall);
  const double crater_m = std::min(meets_m, heap.base_radius_m());
  const double flows_m3 = heap.volume_m3(crater_m) - under_crater_m3(rise, sump_inside_m, crater_m);
  return {total_m3 - flows_m3, crater_m, Remainder::crater};
}

double cone_m3(double radius_m, double slope) { return pi * radius_m * radius_m * radius_m * slope / 3; }

/// The crater of a core has its bottom where the heap meets the wall.
double core_m3(double radius_m, double filling, double emptying) {
  if (filling <= 0) return 0;
  const double peak_m = radius_m * filling, crater_m = peak_m / (filling + emptying);
  return pi / 3 * peak_m * crater_m * crater_m;
}

BinVolume measured(const BinRoom& room, double filling, double apex_over_wall_m, double emptying) {
  const double hopper = tan(room.hopper), roof = tan(room.roof), radius_m = room.radius_m;
  const Heap heap{radius_m, room.wall_depth_m + apex_over_wall_m + radius_m * hopper, filling + hopper};
  const Drawn drawn = drawn_by_sump(heap, emptying - hopper, room.sump_radius_m);
  const double level_m3 = pi * radius_m * radius_m * room.wall_depth_m + cone_m3(radius_m, hopper);
  BinVolume volume;
  volume.level = GrainVolume::cubic_metres(level_m3);
  volume.total = GrainVolume::cubic_metres(heap.volume_m3());
  volume.heap = volume.total - volume.level;
  volume.roof_cone = GrainVolume::cubic_metres(cone_m3(radius_m, roof));
  volume.stays = GrainVolume::cubic_metres(drawn.stays_m3);
  volume.flows = volume.total - volume.stays;
  volume.core = GrainVolume::cubic_metres(core_m3(radius_m, filling, emptying));
  volume.remainder = drawn.remainder;
  volume.crater_radius_m = drawn.crater_m;
  volume.heap_meets_roof = filling > roof;
  return volume;
}

}  // namespace

double BinVolume::stays_ratio() const {
  return total.as_cubic_metres() > 0 ? stays.as_cubic_metres() / total.as_cubic_metres() : 0;
}

BinRoom room_of(const Bin& bin) {
  BinRoom room{bin.diameter_m / 2, bin.eave_height_m, bin.roof_slope, {}, bin.sump_radius_m};
  if (bin.floor == BinFloor::raised) room.wall_depth_m = std::max(0.0, bin.eave_height_m - bin.floor_height_m);
  if (bin.floor == BinFloor::hopper) room.hopper = bin.hopper_angle;
  return room;
}

BinRoom room_of(const OverheadHolding& bin) {
  return {bin.diameter_m / 2, bin.wall_height_m, bin.roof_slope, bin.hopper_angle, 0};
}

BinVolume heaped(const BinRoom& room, const Grain& grain) {
  const double filling = tan(grain.filling);
  // A heap steeper than the roof has its peak at the roof's and meets the wall below the eave.
  const double apex_over_wall_m = room.radius_m * std::min(filling, tan(room.roof));
  return measured(room, filling, apex_over_wall_m, tan(grain.emptying));
}

BinVolume struck(const BinRoom& room, const Grain& grain) { return measured(room, 0, 0, tan(grain.emptying)); }

}  // namespace yardwright::pace
