#include "geom/drain/storm/storm.hpp"

#include <algorithm>
#include <cmath>

#include "geom/drain/raster.hpp"
#include "geom/drain/storm/standing_water.hpp"
#include "geom/drain/storm/storm_run.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr double wet_wall_m = 0.0254;
constexpr double film_m = 0.001;  // a level or a speed of less water says nothing

class Recorder {
 public:
  Recorder(const StormRun& run, const StormGround& ground) : run_{run}, ground_{ground} {
    for (std::size_t i = 0; i < ground.tanks.size(); ++i) {
      const PitTank& tank = ground.tanks[i];
      PitStory pit{tank.item, tank.floor_m, tank.rim_m};
      pit.highest_m = run.pits().level_m(i);
      pit.highest_beside_m = tank.rim_m;
      pit.pump_works = tank.pump.works;
      pit.has_tunnel = std::ranges::any_of(
          ground.tunnels, [i](const TunnelLink& tunnel) { return tunnel.from == i || tunnel.to == i; });
      story.pits.push_back(std::move(pit));
    }
    for (const CulvertPipe& pipe : ground.culverts) story.culverts.push_back({pipe.item});
    for (const TileRun& tile : ground.tiles.lines) story.tiles.push_back({tile.item});
    for (const TileGrate& grate : ground.tiles.grates) story.grates.push_back({grate.item});
    for (const Roof& roof : ground.roofs) {
      if (!roof.is_wall) continue;
      story.walls.push_back({roof.item});
      beside_walls_.push_back(roof.drip);
    }
    deepest_m_.assign(ground.bed.frame().cells(), 0.0F);
    before_.pit_in_m3.assign(ground.tanks.size(), 0.0);
    before_.pumped_m3.assign(ground.tanks.size(), 0.0);
    before_.culvert_m3.assign(ground.culverts.size(), 0.0);
    before_.tile_m3.assign(ground.tiles.lines.size(), 0.0);
    before_.grate_m3.assign(ground.tiles.grates.size(), 0.0);
    before_.time_s = watched_s_ = run.now_s();
  }

  /// After every step: when pits are reached.
  void watch() {
    for (std::size_t i = 0; i < story.pits.size(); ++i) {
      PitStory& pit = story.pits[i];
      const double level_m = run_.pits().level_m(i), now_s = run_.now_s();
      pit.highest_m = std::max(pit.highest_m, level_m);
      if (!pit.wet_s && level_m > ground_.tanks[i].pump.on_level_m) pit.wet_s = now_s;
      pit.highest_beside_m = std::max(pit.highest_beside_m, run_.level_at_rim_m(i));
      if (!pit.rim_s && pit.highest_beside_m > pit.rim_m + film_m) pit.rim_s = now_s;
      if (!pit.overflows_s && run_.is_full(i)) pit.overflows_s = now_s;
    }
    for (std::size_t i = 0; i < story.walls.size(); ++i) watch_wall(i, run_.now_s() - watched_s_);
    for (std::size_t i = 0; i < story.tiles.size(); ++i) {
      if (run_.is_tile_full(i)) story.tiles[i].full_s += run_.now_s() - watched_s_;
    }
    watched_s_ = run_.now_s();
  }

  void sample() {
    if (!story.times_s.empty() && run_.now_s() <= story.times_s.back()) return;
    const double span_s = std::max(run_.now_s() - before_.time_s, 1e-9);
    const double left_m3 = run_.flow().left_m3();
    story.times_s.push_back(run_.now_s());
    story.leaving_m3_per_s.push_back((left_m3 - before_.left_m3) / span_s);
    for (std::size_t i = 0; i < story.pits.size(); ++i) sample_pit(i, span_s);
    for (std::size_t i = 0; i < story.culverts.size(); ++i)
      sample_pipe(story.culverts[i], run_.culvert_m3(i), before_.culvert_m3[i], span_s);
    for (std::size_t i = 0; i < story.tiles.size(); ++i)
      sample_pipe(story.tiles[i], run_.tile_m3(i), before_.tile_m3[i], span_s);
    for (std::size_t i = 0; i < story.grates.size(); ++i)
      sample_pipe(story.grates[i], run_.grate_m3(i), before_.grate_m3[i], span_s);
    for (std::size_t i = 0; i < deepest_m_.size(); ++i)
      deepest_m_[i] = std::max(deepest_m_[i], static_cast<float>(run_.flow().depth_m(static_cast<Cell>(i))));
    before_.left_m3 = left_m3;
    before_.time_s = run_.now_s();
  }

  void keep_frame() {
    if (story.frames.empty() || story.frames.back().time_s < run_.now_s())
      story.frames.push_back(frame_of(run_.flow(), run_.now_s()));
  }

  StormStory finished(bool stopped) && {
    story.stopped = stopped;
    story.end_s = run_.now_s();
    story.steps = run_.steps();
    story.deepest_m = {ground_.bed.frame(), std::move(deepest_m_)};
    story.balance = run_.balance();
    story.left_out = ground_.left_out;
    for (std::size_t i = 0; i < story.pits.size(); ++i) {
      story.pits[i].in_m3 = came_in_m3(i);
      story.pits[i].pumped_m3 = run_.pits().state(i).pumped_m3;
    }
    return std::move(story);
  }

 private:
  struct Before {
    double time_s = 0, left_m3 = 0;
    std::vector<double> pit_in_m3, pumped_m3, culvert_m3, tile_m3, grate_m3;
  };

  static void sample_pipe(PipeStory& pipe, double carried_m3, double& before_m3, double span_s) {
    const double flow = (carried_m3 - before_m3) / span_s;
    pipe.flow_m3_per_s.push_back(flow);
    pipe.highest_m3_per_s = std::max(pipe.highest_m3_per_s, flow);
    before_m3 = carried_m3;
  }

  void sample_pit(std::size_t i, double span_s) {
    const double in_m3 = came_in_m3(i), pumped_m3 = run_.pits().state(i).pumped_m3;
    story.pits[i].samples.push_back({run_.now_s(), run_.pits().level_m(i), (in_m3 - before_.pit_in_m3[i]) / span_s,
                                     (pumped_m3 - before_.pumped_m3[i]) / span_s});
    before_.pit_in_m3[i] = in_m3;
    before_.pumped_m3[i] = pumped_m3;
  }

  double came_in_m3(std::size_t pit) const { return run_.pit_inflow_m3(pit) + run_.pits().state(pit).tunnels_m3; }

  void watch_wall(std::size_t i, double span_s) {
    double depth_m = 0;
    for (const Cell cell : beside_walls_[i]) depth_m = std::max(depth_m, run_.flow().depth_m(cell));
    story.walls[i].deepest_m = std::max(story.walls[i].deepest_m, depth_m);
    if (depth_m > wet_wall_m) story.walls[i].wet_s += span_s;
  }

  static StormFrame frame_of(const SurfaceFlow& flow, double time_s) {
    const auto speed = [](double flow_m2_per_s, double depth_m) {
      const double mm_per_s = depth_m > film_m ? 1000 * flow_m2_per_s / depth_m : 0;
      return static_cast<std::int16_t>(std::lround(std::clamp(mm_per_s, -32000.0, 32000.0)));
    };
    StormFrame frame{time_s};
    frame.depth_mm.reserve(flow.frame().cells());
    frame.east_mm_per_s.reserve(flow.frame().cells());
    frame.north_mm_per_s.reserve(flow.frame().cells());
    for (std::size_t i = 0; i < flow.frame().cells(); ++i) {
      const auto cell = static_cast<Cell>(i);
      const double depth_m = flow.depth_m(cell);
      frame.depth_mm.push_back(static_cast<std::uint16_t>(std::lround(std::min(depth_m * 1000, 65000.0))));
      frame.east_mm_per_s.push_back(speed(flow.flow_east_m2_per_s(cell), depth_m));
      frame.north_mm_per_s.push_back(speed(flow.flow_north_m2_per_s(cell), depth_m));
    }
    return frame;
  }

 public:
  StormStory story;

 private:
  const StormRun& run_;
  const StormGround& ground_;
  std::vector<std::vector<Cell>> beside_walls_;
  std::vector<float> deepest_m_;
  double watched_s_ = 0;
  Before before_;
};

std::vector<double> run_off_until(const Rainfall& rain, const StormGround& ground, double time_s) {
  std::vector<double> run_off_m;
  for (const double curve_number : ground.curve_numbers) run_off_m.push_back(rain.run_off_m(time_s, curve_number));
  run_off_m.push_back(rain.run_off_m(time_s, ground.roof_curve_number));
  return run_off_m;
}

/// Few enough frames for the memory that they may take.
double frame_span_s(const StormOptions& options, std::size_t cells) {
  constexpr double most_bytes = 400e6, bytes_a_cell = 6;
  const double most_frames = std::max(2.0, most_bytes / (bytes_a_cell * static_cast<double>(cells)));
  return std::max(options.frame_every_s, options.length_s / most_frames);
}

/// To the end, telling samples and frames at their times; stops early where the progress says so.
bool stopped_on_the_way(StormRun& run, Recorder& recorder, const StormOptions& options, const Progress& progress) {
  constexpr int steps_between_looks = 50;
  const double start_s = run.now_s(), end_s = std::min(start_s + options.length_s, storm_length_s);
  const double frames_s = frame_span_s(options, run.flow().frame().cells());
  double next_frame_s = start_s;
  const auto is_told_to_stop = [&] { return progress && !progress((run.now_s() - start_s) / (end_s - start_s)); };
  for (double next_s = start_s;; next_s = std::min(next_s + options.record_every_s, end_s)) {
    while (run.now_s() < next_s) {
      run.step(next_s);
      recorder.watch();
      if (run.steps() % steps_between_looks == 0 && is_told_to_stop()) return true;
    }
    recorder.sample();
    if (options.frame_every_s > 0 && run.now_s() >= next_frame_s) {
      recorder.keep_frame();
      next_frame_s += frames_s;
    }
    if (run.now_s() >= end_s) break;
  }
  if (options.frame_every_s > 0) recorder.keep_frame();
  return false;
}

void stop_pumps(std::vector<PitTank>& tanks, const StormOptions& options) {
  for (PitTank& tank : tanks) {
    const bool this_one = options.mishap == Mishap::pump_fails && tank.item == options.failed_pump;
    tank.pump.works = options.mishap != Mishap::power_fails && !this_one;
  }
}

/// Of the hollow that touches a rim, the highest.
std::optional<double> spill_at(const Flow& flow, const PitMouth& mouth) {
  std::optional<double> highest_m;
  for (const RimStretch& stretch : mouth.rim) {
    const std::int32_t number = flow.depression[static_cast<std::size_t>(stretch.cell)];
    if (number == no_depression) continue;
    const double spill_m = flow.depressions[static_cast<std::size_t>(number)].spill_level_m;
    highest_m = std::max(highest_m.value_or(spill_m), spill_m);
  }
  return highest_m;
}

Problems why_not(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const CoverMap& covers) {
  const std::string where = "the storm of " + site.name;
  if (!surface.known()) return {{"the ground is not known", where, "import its levels first"}};
  if (covers.covers.empty())
    return {{"its ground cover \"" + site.storm.cover + "\" is not known", where,
             "choose one of " + names_of(catalogs.covers)}};
  if (!Rainfall::of(site.storm, catalogs))
    return {{"how its rain falls over the day is not known", where, "choose a storm type, or type a distribution"}};
  return {};
}

}  // namespace

double PitStory::highest_inflow_m3_per_s() const {
  double highest = 0;
  for (const PitSample& sample : samples) highest = std::max(highest, sample.inflow_m3_per_s);
  return highest;
}

double WaterBalance::error_ratio() const {
  const double in_m3 = stood_m3 + rain_m3;
  const double out_m3 = soaked_m3 + on_ground_m3 + in_pits_m3 + pumped_m3 + left_m3;
  return in_m3 > 0 ? std::abs(in_m3 - out_m3) / in_m3 : 0;
}

Expected<StormStory> run_storm(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                               const StormOptions& options, const Progress& progress) {
  const CoverMap covers = surface.known() ? cover_map(site, catalogs, surface.design.frame()) : CoverMap{};
  if (Problems problems = why_not(site, surface, catalogs, covers); !problems.empty())
    return tl::unexpected{std::move(problems)};
  StormGround ground = storm_ground(site, surface, covers);
  stop_pumps(ground.tanks, options);
  const Rainfall rain = *Rainfall::of(site.storm, catalogs);
  const double start_s = options.start_s.value_or(rain.heaviest_start_s(std::min(options.length_s, storm_length_s)));
  StormRun run{ground, rain, options, start_s};
  const Flow flow = yard_flow(site, surface);
  run.stand(standing_water(flow, ground, run_off_until(rain, ground, start_s)));
  Recorder recorder{run, ground};
  for (std::size_t i = 0; i < ground.tanks.size(); ++i)
    recorder.story.pits[i].spill_m = spill_at(flow, ground.mouths[i]);
  recorder.story.start_s = start_s;
  const bool stopped = stopped_on_the_way(run, recorder, options, progress);
  return std::move(recorder).finished(stopped);
}

}  // namespace yardwright::drain::storm
