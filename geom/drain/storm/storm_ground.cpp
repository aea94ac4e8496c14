#include "geom/drain/storm/storm_ground.hpp"

#include <algorithm>
#include <cassert>

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
        bed_m_{with_walls(site, surface.design).values()} {
    assert(!covers.covers.empty() && covers.covers.size() < 256);
    ground_.kind = covers.of_cell;
    for (const CellCover& cover : covers.covers) ground_.curve_numbers.push_back(cover.curve_number);
    for (const std::uint8_t kind : covers.of_cell)
      ground_.roughness_n.push_back(static_cast<float>(covers.covers[kind].sheet_n));
  }

  StormGround built() && {
    for (const Item& item : site_.items) {
      if (turns_water(item)) take_dry(cells_in(frame_, *footprint(item.thing)));
      if (const auto hole = pit_hole(item.thing)) take_dry(cells_in(frame_, *hole));
    }
    for (const Item& item : site_.items) {
      if (turns_water(item)) add_roof(item);
      if (pit_body(item.thing) != nullptr) add_pit(item);
    }
    for_each<yardwright::Tunnel>(site_,
                                 [&](const Item& item, const yardwright::Tunnel& tunnel) { add_tunnel(item, tunnel); });
    for_each<Culvert>(site_, [&](const Item& item, const Culvert& culvert) { add_culvert(item, culvert); });
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

  /// The cells of open ground around some cells.
  std::vector<Cell> open_around(const std::vector<Cell>& cells) const {
    std::vector<Cell> around = with_neighbours(frame_, cells);
    std::erase_if(around, [&](Cell cell) { return ground_.kind[at(cell)] == dry_kind(); });
    return around;
  }

  void add_roof(const Item& item) {
    const std::vector<Cell> cells = cells_in(frame_, *footprint(item.thing));
    std::vector<Cell> drip = open_around(cells);
    if (cells.empty()) return;  // smaller than a cell: its rain falls on the ground there
    if (drip.empty()) return leave_out(item, "nothing around its roof can take its rain");
    ground_.roofs.push_back({item.id, static_cast<double>(cells.size()) * frame_.cell_area_m2(), std::move(drip)});
  }

  void add_pit(const Item& item) {
    const Polygon hole = *pit_hole(item.thing);
    const Cell centre = cell_at(frame_, place_of(item.thing));
    const std::vector<Cell> cells = cells_in(frame_, hole);
    std::vector<Cell> rim = cells.empty() && centre != outside ? std::vector{centre} : open_around(cells);
    if (centre == outside || rim.empty())
      return leave_out(item, "its pit lies outside the known ground, or nothing around it is open ground");
    const PitBody& body = *pit_body(item.thing);
    const double ground_m = surface_.level_m(place_of(item.thing));
    const double floor_m = ground_m - body.depth_m;
    ground_.tanks.push_back({item.id,
                             floor_m,
                             ground_m + body.rim_height_m,
                             body.width_m * body.length_m,
                             {body.pump_m3_per_s, floor_m + body.pump_on_m, floor_m + body.pump_off_m}});
    PitMouth mouth;
    const double stretch_m = 2 * (body.width_m + body.length_m) / static_cast<double>(rim.size());
    for (const Cell cell : rim) mouth.rim.push_back({cell, stretch_m});
    mouth.sky_m2 = static_cast<double>(cells.size()) * frame_.cell_area_m2();
    ground_.mouths.push_back(std::move(mouth));
  }

  std::optional<std::size_t> tank_of(ItemId id) const {
    const auto found = std::ranges::find(ground_.tanks, id, &PitTank::item);
    if (found == ground_.tanks.end()) return std::nullopt;
    return static_cast<std::size_t>(found - ground_.tanks.begin());
  }

  void add_tunnel(const Item& item, const yardwright::Tunnel& tunnel) {
    const auto from = tank_of(tunnel.from), to = tank_of(tunnel.to);
    if (!from || !to || from == to) return leave_out(item, "it does not join two pits");
    const double sill_m = surface_.level_m(tunnel.path.front()) - tunnel.sill_depth_m;
    ground_.tunnels.push_back({*from, *to, sill_m, tunnel.width_m, tunnel.height_m});
  }

  void add_culvert(const Item& item, const Culvert& culvert) {
    if (culvert.path.size() < 2) return leave_out(item, "it has no path");
    const Cell start = pipe_mouth(surface_.design, culvert.path.front());
    const Cell end = pipe_mouth(surface_.design, culvert.path.back());
    if (start == outside || end == outside || start == end)
      return leave_out(item, "its ends lie outside the known ground, or on one place");
    // An end that would stick out of the ground lies on it.
    const auto invert_m = [&](Cell cell, SitePoint end_at, double depth_m) {
      return std::min(surface_.level_m(end_at) - depth_m, static_cast<double>(surface_.design.values()[at(cell)]));
    };
    ground_.culverts.push_back({item.id,
                                {culvert.inlet, culvert.diameter_m, length(culvert.path),
                                 invert_m(start, culvert.path.front(), culvert.start_depth_m),
                                 invert_m(end, culvert.path.back(), culvert.end_depth_m), culvert.roughness_n},
                                start,
                                end});
  }

  void leave_out(const Item& item, const std::string& why) {
    ground_.left_out.push_back(title_of(item) + " is not in the storm: " + why);
  }

  const Site& site_;
  const DesignSurface& surface_;
  GridFrame frame_;
  std::vector<float> bed_m_;
  StormGround ground_;
};

}  // namespace

StormGround storm_ground(const Site& site, const DesignSurface& surface, const CoverMap& covers) {
  return Builder{site, surface, covers}.built();
}

}  // namespace yardwright::drain::storm
