#include "geom/drain/tile_lines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <optional>

#include "geom/drain/raster.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

constexpr double gravity_m_per_s2 = 9.81;
constexpr double reach_m = 1.0;  // that a hand drawing on a plan is off by
constexpr double entrance_and_exit_ratio = 1.5;

class Finder {
 public:
  Finder(const Site& site, const DesignSurface& surface) : site_{site}, surface_{surface} {}

  TileSystem found() && {
    for_each<TileLine>(site_, [&](const Item& item, const TileLine& tile) { add_line(item, tile); });
    find_ends();
    put_in_order();
    for_each<CatchBasin>(site_, [&](const Item& item, const CatchBasin& basin) {
      add_inlet(item, {basin.at}, {basin.width_m, basin.length_m, basin.open_ratio, 1 - basin.clogged_ratio});
    });
    for_each<TrenchDrain>(site_, [&](const Item& item, const TrenchDrain& drain) {
      add_inlet(item, drain.path, {drain.width_m, length(drain.path), drain.open_ratio, 1 - drain.clogged_ratio});
    });
    for_each<Downspout>(site_, [&](const Item& item, const Downspout& downspout) { add_downspout(item, downspout); });
    return std::move(system_);
  }

 private:
  bool on_ground(SitePoint at) const { return surface_.known() && cell_at(surface_.design.frame(), at) != outside; }

  void add_line(const Item& item, const TileLine& tile) {
    if (tile.path.size() < 2 || length(tile.path) <= 0) return leave_out(item, "it has no path");
    if (!on_ground(tile.path.front())) return leave_out(item, "it begins outside the known ground");
    const SitePoint start = tile.path.front(), end = tile.path.back();
    const TilePipe pipe{tile.diameter_m, length(tile.path), surface_.level_m(start) - tile.start_depth_m,
                        surface_.level_m(end) - tile.end_depth_m, tile.roughness_n};
    if (pipe.end_invert_m > pipe.start_invert_m)
      return leave_out(item, "it rises from its start to its end; draw it from its upper end to its lower");
    TileRun run{item.id, pipe};
    run.outlet = end;
    run.tailwater_level_m = pipe.end_invert_m + tile.tailwater_m;
    system_.lines.push_back(run);
    paths_.push_back(tile.path);
  }

  void find_ends() {
    for (std::size_t i = 0; i < system_.lines.size(); ++i) find_end(i);
    for (std::size_t i = 0; i < system_.lines.size(); ++i) {
      if (!comes_back(i)) continue;
      const Item* item = find(site_, system_.lines[i].item);
      leave_out(*item, "the lines that it runs into come back to it; it lets its water out at its end");
      system_.lines[i].end = TileEnd::ground;
    }
  }

  void find_end(std::size_t i) {
    TileRun& run = system_.lines[i];
    if (const auto line = line_at(run.outlet, i)) {
      run.end = TileEnd::line;
      run.line = *line;
      run.into = system_.lines[*line].item;
    } else if (const Item* pit = pit_at(run.outlet)) {
      run.end = TileEnd::pit;
      run.into = pit->id;
    } else if (const Item* ditch = ditch_at(run.outlet)) {
      run.end = TileEnd::ditch;
      run.into = ditch->id;
      run.tailwater_level_m =
          std::max(run.tailwater_level_m, surface_.level_m(run.outlet) + as<ReceivingDitch>(*ditch)->water_depth_m);
    } else if (!on_ground(run.outlet)) {
      run.end = TileEnd::beyond;
    }
  }

  bool comes_back(std::size_t from) const {
    std::size_t at = from;
    for (std::size_t i = 0; i < system_.lines.size(); ++i) {
      if (system_.lines[at].end != TileEnd::line) return false;
      at = system_.lines[at].line;
      if (at == from) return true;
    }
    return false;
  }

  /// How many lines its water still runs through.
  std::size_t lines_below(std::size_t line) const {
    std::size_t count = 0;
    for (; system_.lines[line].end == TileEnd::line; line = system_.lines[line].line) ++count;
    return count;
  }

  void put_in_order() {
    std::vector<std::size_t> order(system_.lines.size()), place(order.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, std::greater{}, [&](std::size_t line) { return lines_below(line); });
    for (std::size_t i = 0; i < order.size(); ++i) place[order[i]] = i;
    std::vector<TileRun> lines;
    std::vector<SitePath> paths;
    for (const std::size_t i : order) {
      lines.push_back(system_.lines[i]);
      lines.back().line = place[lines.back().line];
      paths.push_back(paths_[i]);
    }
    system_.lines = std::move(lines);
    paths_ = std::move(paths);
  }

  void add_inlet(const Item& item, const SitePath& along, const Grate& grate) {
    if (along.empty()) return leave_out(item, "it has no place");
    auto line = line_at(along.back());
    if (!line) line = line_at(along.front());
    if (!line) return leave_out(item, "no tile line runs under it, so that it takes no water");
    system_.inlets.push_back({item.id, *line, along, grate});
  }

  void add_downspout(const Item& item, const Downspout& downspout) {
    const Item* roof = find(site_, downspout.of);
    if (roof == nullptr || !turns_water(*roof))
      return leave_out(item, "it drains no roof: choose the bin, dryer or building that it is of");
    if (const auto line = line_at(downspout.at))
      system_.roofs.push_back({item.id, downspout.of, downspout.share_ratio, *line});
  }

  std::optional<std::size_t> line_at(SitePoint at, std::size_t except = static_cast<std::size_t>(-1)) const {
    std::optional<std::size_t> nearest;
    double least_m = reach_m;
    for (std::size_t i = 0; i < paths_.size(); ++i) {
      const double off_m = i == except ? 2 * reach_m : nearest_on_path(paths_[i], at).distance_m;
      if (off_m <= least_m) least_m = off_m, nearest = i;
    }
    return nearest;
  }

  const Item* pit_at(SitePoint at) const {
    const auto holds = [&](const Item& item) {
      const auto hole = pit_hole(item.thing);
      return hole && distance_to(*hole, at) <= reach_m;
    };
    const auto found = std::ranges::find_if(site_.items, holds);
    return found == site_.items.end() ? nullptr : &*found;
  }

  static double distance_to(const Polygon& area, SitePoint at) {
    if (contains(Outline{area}, at)) return 0;
    SitePath ring = area.outer;
    ring.push_back(ring.front());
    return nearest_on_path(ring, at).distance_m;
  }

  const Item* ditch_at(SitePoint at) const {
    const auto runs_by = [&](const Item& item) {
      const ReceivingDitch* ditch = as<ReceivingDitch>(item);
      return ditch != nullptr && ditch->path.size() > 1 &&
             nearest_on_path(ditch->path, at).distance_m <= ditch->width_m / 2 + reach_m;
    };
    const auto found = std::ranges::find_if(site_.items, runs_by);
    return found == site_.items.end() ? nullptr : &*found;
  }

  void leave_out(const Item& item, const std::string& why) { system_.left_out.push_back({item.id, why}); }

  const Site& site_;
  const DesignSurface& surface_;
  TileSystem system_;
  std::vector<SitePath> paths_;  ///< of the lines
};

}  // namespace

double tile_m3_per_s(const TilePipe& pipe, double start_level_m, double outlet_level_m) {
  const double head_m = std::max(start_level_m, pipe.start_crown_m()) - std::max(outlet_level_m, pipe.end_crown_m());
  if (head_m <= 0) return 0;
  const double radius_m = pipe.diameter_m / 4;
  const double friction_ratio =
      2 * gravity_m_per_s2 * pipe.roughness_n * pipe.roughness_n * pipe.length_m / std::pow(radius_m, 4.0 / 3);
  const double speed = std::sqrt(2 * gravity_m_per_s2 * head_m / (entrance_and_exit_ratio + friction_ratio));
  return speed * std::numbers::pi * pipe.diameter_m * pipe.diameter_m / 4;
}

TileSystem tile_system(const Site& site, const DesignSurface& surface) { return Finder{site, surface}.found(); }

}  // namespace yardwright::drain
