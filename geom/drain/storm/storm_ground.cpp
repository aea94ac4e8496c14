#include "geom/drain/storm/storm_ground.hpp"

#include <algorithm>
#include <cassert>

#include "geom/drain/idle_drains.hpp"
#include "geom/drain/raster.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr float wall_m = 50;

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

class Builder {
 public:
  Builder(const Site& site, const DesignSurface& surface, const CoverMap& covers)
      : site_{site},
        surface_{surface},
        frame_{surface.design.frame()},
        bed_m_{with_walls(site, surface.design).values()},
        tile_system_{tile_system(site, surface)} {
    assert(!covers.covers.empty() && covers.covers.size() < 256);
    claimed_.assign(frame_.cells(), false);
    ground_.kind = covers.of_cell;
    for (const std::string& name : covers.unknown)
      ground_.left_out.push_back("The ground cover \"" + name + "\" is not known; the ground under it keeps its own");
    for (const CellCover& cover : covers.covers) ground_.curve_numbers.push_back(cover.curve_number);
    for (const std::uint8_t kind : covers.of_cell)
      ground_.roughness_n.push_back(static_cast<float>(covers.covers[kind].sheet_n));
  }

  StormGround built() && {
    for (const Item& item : site_.items) {
      if (turns_water(item)) take_dry(cells_in(frame_, *footprint(item.thing)));
    }
    for (const Item& item : site_.items) {
      if (const auto hole = pit_hole(item.thing)) take_dry(cells_in(frame_, *hole));
    }
    for (const Item& item : site_.items) {
      if (turns_water(item)) add_roof(item);
      if (pit_body(item.thing) != nullptr) add_pit(item);
    }
    for_each<Tunnel>(site_, [&](const Item& item, const Tunnel& tunnel) { add_tunnel(item, tunnel); });
    for_each<Culvert>(site_, [&](const Item& item, const Culvert& culvert) { add_culvert(item, culvert); });
    add_tiles();
    for_each<ReceivingDitch>(site_, [&](const Item&, const ReceivingDitch& ditch) {
      for (const Cell cell : open_ones(ditch_cells(frame_, ditch)))
        ground_.ditches.push_back({cell, ditch.water_depth_m});
    });
    ground_.bed = {frame_, std::move(bed_m_)};
    return std::move(ground_);
  }

 private:
  void take_dry(const std::vector<Cell>& cells) {
    for (const Cell cell : cells) {
      ground_.kind[at(cell)] = dry_kind();
      bed_m_[at(cell)] = std::max(bed_m_[at(cell)], surface_.design.values()[at(cell)] + wall_m);
    }
  }

  std::uint8_t dry_kind() const { return static_cast<std::uint8_t>(ground_.curve_numbers.size()); }
  bool is_dry(Cell cell) const { return ground_.kind[at(cell)] == dry_kind(); }

  /// Those whose rain no roof or hole before has taken.
  std::vector<Cell> claim(const std::vector<Cell>& cells) {
    std::vector<Cell> mine;
    for (const Cell cell : cells) {
      if (claimed_[at(cell)]) continue;
      claimed_[at(cell)] = true;
      mine.push_back(cell);
    }
    return mine;
  }

  double area_m2(const std::vector<Cell>& cells) const {
    return static_cast<double>(cells.size()) * frame_.cell_area_m2();
  }

  /// The cells of open ground around some cells.
  std::vector<Cell> open_around(const std::vector<Cell>& cells) const {
    std::vector<Cell> around = with_neighbours(frame_, cells);
    std::erase_if(around, [&](Cell cell) { return is_dry(cell); });
    return around;
  }

  void add_roof(const Item& item) {
    const std::vector<Cell> cells = cells_in(frame_, *footprint(item.thing));
    std::vector<Cell> drip = open_around(cells);
    if (cells.empty()) return leave_out(item, "it is smaller than a cell of the ground, or lies outside of it");
    if (drip.empty()) return leave_out(item, "no open ground lies around it");
    const double roof_m2 = area_m2(claim(cells));
    const double led_m2 = roof_m2 * lead_down(item.id, roof_m2);
    ground_.roofs.push_back({item.id, roof_m2 - led_m2, std::move(drip)});
  }

  /// The share of a roof whose rain its downspouts lead away: onto the ground at their feet, or into a tile line.
  double lead_down(ItemId roof, double roof_m2) {
    double led_ratio = 0;
    for_each<Downspout>(site_, [&](const Item& item, const Downspout& downspout) {
      if (downspout.of != roof) return;
      const Cell foot = open_mouth(downspout.at);
      if (foot == outside) return leave_out(item, "its foot stands outside the known ground, or in a wall");
      const double share = std::min(downspout.share_ratio, 1 - led_ratio);
      led_ratio += share;
      const auto piped = std::ranges::find(tile_system_.roofs, item.id, &TileRoof::downspout);
      if (piped != tile_system_.roofs.end())
        ground_.tiles.roofs.push_back({piped->line, share * roof_m2, foot});
      else
        ground_.roofs.push_back({item.id, share * roof_m2, {foot}, false});
    });
    return led_ratio;
  }

  void add_tiles() {
    Tiles& tiles = ground_.tiles;
    tiles.lines = tile_system_.lines;
    for (const TileRun& run : tiles.lines) {
      TileOutlet outlet;
      if (run.end == TileEnd::pit) outlet.pit = tank_of(run.into);
      if (run.end == TileEnd::ground || (run.end == TileEnd::pit && !outlet.pit)) outlet.cell = open_mouth(run.outlet);
      tiles.outlets.push_back(outlet);
    }
    for (const TileInlet& inlet : tile_system_.inlets)
      tiles.grates.push_back(
          {inlet.item, inlet.line, inlet.grate, open_ones(inlet_cells(surface_.design, inlet.along))});
    for (const LeftOut& left : tile_system_.left_out) leave_out(*find(site_, left.item), left.why);
  }

  void add_pit(const Item& item) {
    const PitBody& body = *pit_body(item.thing);
    const double plan_m2 = body.width_m * body.length_m;
    const Cell centre = cell_at(frame_, place_of(item.thing));
    if (plan_m2 <= 0) return leave_out(item, "its pit has no width or no length");
    if (centre == outside) return leave_out(item, "its pit lies outside the known ground");
    const std::vector<Cell> cells = cells_in(frame_, *pit_hole(item.thing));
    const std::vector<Cell> rim = cells.empty() ? open_ones({centre}) : open_around(cells);
    if (rim.empty()) return leave_out(item, "no open ground lies around its pit; it may lie under a building");
    const double ground_m = surface_.level_m(place_of(item.thing)), floor_m = ground_m - body.depth_m;
    ground_.tanks.push_back({item.id,
                             floor_m,
                             ground_m + body.rim_height_m,
                             plan_m2,
                             {body.pump_m3_per_s, floor_m + body.pump_on_m, floor_m + body.pump_off_m, true,
                              body.pump_shutoff_m, ground_m + body.pump_discharge_m}});
    ground_.mouths.push_back(mouth_of(item, body, claim(cells), rim, plan_m2));
  }

  /// Rain into the hole where it is open to the sky; what falls on its cells beyond comes down around it.
  PitMouth mouth_of(const Item& item, const PitBody& body, const std::vector<Cell>& cells, const std::vector<Cell>& rim,
                    double plan_m2) {
    const Receiving* dump = as<Receiving>(item);
    const bool roofed = dump != nullptr && dump->type == ReceivingKind::drive_through;
    PitMouth mouth;
    const double stretch_m = 2 * (body.width_m + body.length_m) / static_cast<double>(rim.size());
    for (const Cell cell : rim) mouth.rim.push_back({cell, stretch_m});
    mouth.sky_m2 = roofed ? 0 : std::min(plan_m2, area_m2(cells));
    const double beyond_m2 = area_m2(cells) - mouth.sky_m2;
    if (beyond_m2 > 0) ground_.roofs.push_back({item.id, beyond_m2, rim, false});
    return mouth;
  }

  std::vector<Cell> open_ones(std::vector<Cell> cells) const {
    std::erase_if(cells, [&](Cell cell) { return is_dry(cell); });
    return cells;
  }

  std::optional<std::size_t> tank_of(ItemId id) const {
    const auto found = std::ranges::find(ground_.tanks, id, &PitTank::item);
    if (found == ground_.tanks.end()) return std::nullopt;
    return static_cast<std::size_t>(found - ground_.tanks.begin());
  }

  void add_tunnel(const Item& item, const Tunnel& tunnel) {
    const auto from = tank_of(tunnel.from), to = tank_of(tunnel.to);
    if (tunnel.path.empty() || !from || !to || from == to)
      return leave_out(item, "it does not join two pits that are in it");
    const double sill_m = surface_.level_m(tunnel.path.front()) - tunnel.sill_depth_m;
    ground_.tunnels.push_back({*from, *to, sill_m, tunnel.width_m, tunnel.height_m});
  }

  void add_culvert(const Item& item, const Culvert& culvert) {
    if (const std::string why = why_idle(culvert, surface_); !why.empty()) return leave_out(item, why);
    const Cell start = open_mouth(culvert.path.front()), end = open_mouth(culvert.path.back());
    if (start == outside || end == outside || start == end)
      return leave_out(item, "an end of it lies in a wall, or both on one place");
    // An end that would stick out of the ground lies on it.
    const auto invert_m = [&](Cell cell, SitePoint end_at, double depth_m) {
      return std::min(surface_.level_m(end_at) - depth_m, static_cast<double>(surface_.design.values()[at(cell)]));
    };
    const CulvertBarrel barrel{culvert.inlet,
                               culvert.diameter_m,
                               length(culvert.path),
                               invert_m(start, culvert.path.front(), culvert.start_depth_m),
                               invert_m(end, culvert.path.back(), culvert.end_depth_m),
                               culvert.roughness_n};
    if (barrel.end_invert_m > barrel.start_invert_m)
      return leave_out(item, "it rises from its start to its end; draw it from its upper end to its lower");
    ground_.culverts.push_back({item.id, barrel, start, end, barrel.end_invert_m + culvert.tailwater_m});
  }

  /// The lowest open cell at a pipe's end.
  Cell open_mouth(SitePoint end) const {
    const Cell cell = cell_at(frame_, end);
    if (cell == outside) return outside;
    const std::vector<Cell> around = open_ones(with_neighbours(frame_, {&cell, 1}));
    const auto level_m = [&](Cell c) { return surface_.design.values()[at(c)]; };
    return around.empty() ? outside : *std::ranges::min_element(around, {}, level_m);
  }

  void leave_out(const Item& item, const std::string& why) {
    ground_.left_out.push_back(title_of(item) + " is not in the storm: " + why);
  }

  const Site& site_;
  const DesignSurface& surface_;
  GridFrame frame_;
  std::vector<float> bed_m_;
  TileSystem tile_system_;
  std::vector<bool> claimed_;  ///< whose rain a roof or a hole takes
  StormGround ground_;
};

}  // namespace

StormGround storm_ground(const Site& site, const DesignSurface& surface, const CoverMap& covers) {
  return Builder{site, surface, covers}.built();
}

}  // namespace yardwright::drain::storm
