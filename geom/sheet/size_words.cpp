#include "geom/sheet/size_words.hpp"

#include <fmt/format.h>

#include "geom/shape/path.hpp"
#include "geom/shape/polygon.hpp"
#include "geom/units/grain_volume.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

/// The words of each kind's size; kinds without one say nothing.
class Size {
 public:
  explicit Size(UnitSystem units) : units_{units} {}

  std::string operator()(const Bin& bin) const {
    return fmt::format("{} across, eave {}", m(bin.diameter_m), m(bin.eave_height_m));
  }
  std::string operator()(const Leg& leg) const {
    return fmt::format("{} discharge, {}", m(leg.discharge_height_m), rate(leg.capacity_m3_per_s));
  }
  std::string operator()(const Dryer& dryer) const { return box(dryer.length_m, dryer.width_m, dryer.height_m); }
  std::string operator()(const OverheadHolding& bin) const {
    return fmt::format("{} across, {} under it", m(bin.diameter_m), m(bin.underside_height_m));
  }
  std::string operator()(const Receiving& dump) const { return box(dump.length_m, dump.width_m, dump.height_m); }
  std::string operator()(const Conveyor& conveyor) const {
    return fmt::format("{} long, {}", m(length(conveyor.path)), rate(conveyor.capacity_m3_per_s));
  }
  std::string operator()(const Spout& spout) const {
    return short_text_of(spout.diameter_m, Quantity::small_length, units_);
  }
  std::string operator()(const Pit& pit) const {
    return box(pit.body.length_m, pit.body.width_m, pit.body.depth_m) + " deep";
  }
  std::string operator()(const Drive& drive) const {
    const std::string size = fmt::format("{} wide, {} long", m(drive.width_m), m(length(drive.path)));
    if (!drive.is_graded()) return size;
    return size + ", graded to " + short_text_of(drive.greatest_grade_ratio, Quantity::grade, units_);
  }
  std::string operator()(const Route& route) const { return route.vehicle; }
  std::string operator()(const Gate& gate) const { return m(gate.width_m) + " clear"; }
  std::string operator()(const Scale& scale) const {
    return fmt::format("{} × {}", m(scale.length_m), m(scale.width_m));
  }
  std::string operator()(const Building& building) const {
    return box(building.length_m, building.width_m, building.height_m);
  }
  std::string operator()(const Tank& tank) const {
    return short_text_of(tank.water_capacity_m3, Quantity::tank_volume, units_) +
           (tank.underground ? ", underground" : "");
  }
  std::string operator()(const OverheadLine& overhead) const {
    return fmt::format("{} long, lowest wire {}", m(length(overhead.path)), m(overhead.lowest_conductor_m));
  }
  std::string operator()(const Berm& berm) const {
    return fmt::format("{} high, {} long", m(berm.height_m), m(length(berm.path)));
  }
  std::string operator()(const Swale& swale) const {
    if (swale.inverts == SwaleInverts::by_level)
      return fmt::format("invert {} to {}, {} long", m(swale.start_level_m), m(swale.end_level_m),
                         m(length(swale.path)));
    return fmt::format("{} to {} deep, {} long", m(swale.start_depth_m), m(swale.end_depth_m), m(length(swale.path)));
  }
  std::string operator()(const Pad& pad) const {
    return fmt::format("{} at level {}", short_text_of(area_m2({pad.outline, {}}), Quantity::area, units_),
                       m(pad.level_m));
  }
  std::string operator()(const Tunnel& tunnel) const {
    return fmt::format("{} × {}, {} long", m(tunnel.width_m), m(tunnel.height_m), m(length(tunnel.path)));
  }
  std::string operator()(const Culvert& culvert) const {
    return fmt::format("{}, {} long", short_text_of(culvert.diameter_m, Quantity::small_length, units_),
                       m(length(culvert.path)));
  }
  std::string operator()(const RetainingWall& wall) const { return m(length(wall.path)) + " long"; }
  std::string operator()(const Curb& curb) const {
    return fmt::format("{} high, {} long", m(curb.height_m), m(length(curb.path)));
  }
  std::string operator()(const CatchBasin& basin) const {
    return fmt::format("{} × {} grate", m(basin.length_m), m(basin.width_m));
  }
  std::string operator()(const TrenchDrain& drain) const {
    return fmt::format("{} wide, {} long", m(drain.width_m), m(length(drain.path)));
  }
  std::string operator()(const TileLine& tile) const {
    return fmt::format("{}, {} long", short_text_of(tile.diameter_m, Quantity::small_length, units_),
                       m(length(tile.path)));
  }
  std::string operator()(const Downspout&) const { return ""; }
  std::string operator()(const ReceivingDitch& ditch) const {
    return fmt::format("{} wide, {} of water", m(ditch.width_m), m(ditch.water_depth_m));
  }
  std::string operator()(const Cover& cover) const { return cover.cover; }
  std::string operator()(const Picture& picture) const { return m(picture.width_m) + " wide"; }
  std::string operator()(const Dimension& dimension) const { return m(length(dimension.path)); }
  std::string operator()(const Well&) const { return ""; }

 private:
  std::string m(double metres) const { return short_text_of(metres, Quantity::length, units_); }
  std::string rate(double m3_per_s) const { return short_text_of(m3_per_s, Quantity::grain_flow, units_); }
  std::string box(double length_m, double width_m, double height_m) const {
    return fmt::format("{} × {} × {}", m(length_m), m(width_m), m(height_m));
  }

  UnitSystem units_;
};

}  // namespace

std::string size_words(const Thing& thing, UnitSystem units) { return std::visit(Size{units}, thing); }

std::string short_text_of(double si, Quantity quantity, UnitSystem units) {
  const std::string text = text_of(si, quantity, units);
  const std::size_t point = text.find('.');
  if (point == text.npos) return text;
  const std::size_t end = std::min(text.find_first_not_of("0123456789", point + 1), text.size());
  const std::size_t last = text.find_last_not_of('0', end - 1);
  return text.substr(0, last == point ? point : last + 1) + text.substr(end);
}

std::string short_volume_text(double grain_m3, UnitSystem units) {
  const double bushels = GrainVolume::cubic_metres(grain_m3).as_bushels();
  if (units == UnitSystem::metric || bushels < 1000) return text_of(grain_m3, Quantity::grain_volume, units);
  return fmt::format("{:.1f}k bu", bushels / 1000);
}

}  // namespace yardwright
