// A storm over the yard, step by step: rain, what soaks in, water over the ground and around roofs, culverts, rims, pits,
// tunnels and pumps; and what is told of it: levels over time, the deepest water, when each pit is reached and when it
// overflows. Begins with the hollows filled by what ran off before. Times in seconds since the storm's beginning, levels
// in metres in the datum of the ground. What is pumped leaves the yard. The same bits at any number of threads.
// Page: docs/methods/storm.md
#pragma once

#include <array>
#include <functional>
#include <optional>

#include "geom/drain/storm/storm_ground.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::drain::storm {

enum class Mishap : std::uint8_t { none, pump_fails, power_fails, inlets_half_blocked, tiles_full };
constexpr std::array<std::string_view, 5> names_of(Mishap) {
  return {"none", "pump-fails", "power-fails", "inlets-half-blocked", "tiles-full"};
}

struct StormOptions {
  std::optional<double> start_s;  ///< otherwise that of the heaviest span
  double length_s = 3 * 3600;
  Mishap mishap = Mishap::none;
  ItemId failed_pump;  ///< the item whose pump fails
  double record_every_s = 60;
  double frame_every_s = 300;  ///< more where the frames would take too much memory; 0 keeps none
};

/// Called now and then with the share done; false stops the storm.
using Progress = std::function<bool(double done_ratio)>;

struct PitSample {
  double time_s = 0;
  double level_m = 0;
  double inflow_m3_per_s = 0;  ///< over the rim, from the sky and through tunnels, since the sample before
  double pumped_m3_per_s = 0;
};

struct PitStory {
  ItemId item;
  double floor_m = 0, rim_m = 0;
  std::vector<PitSample> samples;
  std::optional<double> wet_s;        ///< water first stands on its floor deeper than its pump starts at
  std::optional<double> rim_s;        ///< water first stands over its rim
  std::optional<double> overflows_s;  ///< first full: it turns water away
  double highest_m = 0;               ///< in the pit
  double highest_beside_m = 0;        ///< of the water on the ground around it; the rim where none stands over it
  double in_m3 = 0, pumped_m3 = 0;
  bool pump_works = true;
  bool has_tunnel = false;
  double highest_inflow_m3_per_s() const;  ///< of the samples: means of a minute
  std::optional<double> spill_m;  ///< of the hollow that it lies in: what stands beside it without the pit, at most
};

/// A culvert, a tile line by what comes out of its end, or a grate by what it takes in.
struct PipeStory {
  ItemId item;
  std::vector<double> flow_m3_per_s;  ///< at the samples' times
  double highest_m3_per_s = 0;
  double full_s = 0;  ///< of a tile line: for how long it turned water away
};

/// Water against a wall: a bin, a dryer, a building.
struct WallStory {
  ItemId item;
  double deepest_m = 0;  ///< at any step
  double wet_s = 0;      ///< for how long deeper than an inch
};

/// The yard at one moment, small enough to keep many.
struct StormFrame {
  double time_s = 0;
  std::vector<std::uint16_t> depth_mm;
  std::vector<std::int16_t> east_mm_per_s, north_mm_per_s;
};

struct WaterBalance {
  double stood_m3 = 0;  ///< in hollows at the beginning
  double rain_m3 = 0;
  double soaked_m3 = 0;
  double on_ground_m3 = 0, in_pits_m3 = 0;  ///< at the end
  double pumped_m3 = 0, left_m3 = 0;
  double error_ratio() const;
};

struct StormStory {
  bool stopped = false;
  double start_s = 0, end_s = 0;
  std::int64_t steps = 0;
  std::vector<double> times_s;           ///< of the samples
  std::vector<double> leaving_m3_per_s;  ///< over the edge of the ground, at them
  std::vector<PitStory> pits;
  std::vector<PipeStory> culverts, tiles, grates;
  std::vector<WallStory> walls;
  std::vector<StormFrame> frames;
  Grid<float> deepest_m;  ///< at the samples
  WaterBalance balance;
  std::vector<std::string> left_out;
};

/// Refused where the ground, the storm's cover or its distribution is not known.
Expected<StormStory> run_storm(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                               const StormOptions& options = {}, const Progress& progress = {});

}  // namespace yardwright::drain::storm
