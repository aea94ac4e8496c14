#include "geom/grow/quantities.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "geom/ground/earth_balance.hpp"
#include "geom/grow/concrete.hpp"
#include "geom/pace/bin_volume.hpp"
#include "geom/reach/spout_line.hpp"
#include "geom/shape/polygon.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

constexpr double chord_m = 0.25;  // of the arcs of drives

Work work_of(ConveyorKind kind) {
  switch (kind) {
    case ConveyorKind::tube_auger: return Work::tube_auger;
    case ConveyorKind::u_trough: return Work::u_trough;
    case ConveyorKind::drag: return Work::drag;
    case ConveyorKind::belt: break;
  }
  return Work::belt;
}

Work work_of(BuildingUse use) {
  switch (use) {
    case BuildingUse::farm_building: return Work::farm_building;
    case BuildingUse::control_room: return Work::control_room;
    case BuildingUse::dwelling: break;
  }
  return Work::dwelling;
}

/// Goes through the items and puts each on its lines.
class Count {
 public:
  Count(const Site& site, const DesignSurface& surface, const Catalogs& catalogs)
      : site_{site}, surface_{surface}, catalogs_{catalogs}, rules_{catalogs.rules.with(site.rule_overrides)} {}

  Quantities take() {
    for (const Item& item : site_.items) {
      item_ = &item;
      std::visit([this](const auto& thing) { count(thing); }, item.thing);
      if (const PitBody* body = pit_body(item.thing)) count(*body);
    }
    return std::move(found_);
  }

 private:
  void put(Work work, double amount, const std::vector<double>& size_m = {}) {
    auto line = std::ranges::find_if(
        found_.lines, [&](const QuantityLine& one) { return one.work == work && same_size(one.size_m, size_m); });
    if (line == found_.lines.end()) line = found_.lines.insert(line, {work, size_m, {}});
    line->parts.push_back({{item_->id}, 1, amount});
  }
  void put_one(Work work) { put(work, 1); }
  void leave_out(std::string why) { found_.left_out.push_back({item_->id, std::move(why)}); }

  void put_store(Work work, const pace::BinRoom& room, const std::string& grain, const std::vector<double>& size_m) {
    const Grain* found = find(catalogs_.grains, grain);
    if (found == nullptr) return leave_out("its grain \"" + grain + "\" is not known, so neither is what it holds");
    put(work, pace::heaped(room, *found).total.as_cubic_metres() * rules_.at("pace.pack").value, size_m);
  }

  void count(const Bin& bin) {
    put_store(Work::bin, pace::room_of(bin), bin.grain, {bin.diameter_m, bin.eave_height_m});
    put(Work::bin_foundation, foundation_m3(bin, rules_));
  }
  void count(const OverheadHolding& bin) {
    put_store(Work::overhead_bin, pace::room_of(bin), bin.grain, {bin.diameter_m, bin.wall_height_m});
    put(Work::machine_slab, slab_m3(bin, rules_));
  }
  void count(const Leg& leg) { put(Work::leg, leg.discharge_height_m); }
  void count(const Dryer& dryer) {
    put_one(Work::dryer);
    put(Work::machine_slab, slab_m3(dryer, rules_));
  }
  void count(const Receiving& receiving) {
    put_one(receiving.type == ReceivingKind::drive_through ? Work::drive_through : Work::open_dump);
    put(Work::receiving_floor, floor_m3(receiving, rules_));
  }
  void count(const Spout& spout) {
    const auto line = reach::spout_line(site_, spout, surface_);
    if (!line) return leave_out("it joins no leg to an inlet, so that it has no length");
    put(Work::spout, line->length_m(), {spout.diameter_m});
  }
  void count(const Conveyor& conveyor) {
    if (conveyor.path.size() < 2) return leave_out("it has no line on the plan");
    const double rise_m = surface_.level_m(conveyor.path.back()) + conveyor.end_height_m -
                          surface_.level_m(conveyor.path.front()) - conveyor.start_height_m;
    put(work_of(conveyor.type), std::hypot(length(conveyor.path), rise_m));
  }
  void count(const Scale&) { put_one(Work::scale); }
  void count(const Gate&) { put_one(Work::gate); }
  void count(const Tank& tank) { put(Work::tank, tank.water_capacity_m3); }
  void count(const Building& building) { put(work_of(building.use), building.length_m * building.width_m); }
  void count(const PitBody& pit) {
    put(Work::pit, shell_m3(pit, rules_));
    if (pit.pump_m3_per_s > 0) put_one(Work::pump);
  }
  void count(const Tunnel& tunnel) { put(Work::tunnel, shell_m3(tunnel, rules_)); }
  void count(const Drive& drive) {
    const double area_m2 = length(with_fillets(drive.path, drive.corner_radius_m, chord_m)) * drive.width_m;
    if (drive.surface == DriveSurface::gravel) put(Work::gravel, area_m2 * rules_.at("grow.gravel-drive").value);
    if (drive.surface == DriveSurface::paved) put(Work::paving, area_m2);
  }
  void count(const Pad& pad) {
    put(Work::gravel, area_m2(Polygon{pad.outline, {}}) * rules_.at("grow.gravel-pad").value);
  }
  void count(const Curb& curb) { put(Work::curb, length(curb.path)); }
  void count(const RetainingWall& wall) { put(Work::retaining_wall, length(wall.path)); }
  void count(const Culvert& culvert) { put(Work::culvert, length(culvert.path), {culvert.diameter_m}); }
  void count(const TileLine& tile) { put(Work::tile_line, length(tile.path), {tile.diameter_m}); }
  void count(const TrenchDrain& drain) { put(Work::trench_drain, length(drain.path)); }
  void count(const CatchBasin&) { put_one(Work::catch_basin); }
  /// Nothing is built of the others, or earth alone.
  template <class Other>
  void count(const Other&) {}

  const Site& site_;
  const DesignSurface& surface_;
  const Catalogs& catalogs_;
  RuleBook rules_;
  const Item* item_ = nullptr;
  Quantities found_;
};

/// What shapes the ground of a site and does not of another.
std::vector<ItemId> earth_movers(const Site& site, const Site& other) {
  std::vector<ItemId> ids;
  for (const Item& item : site.items) {
    const Item* same = find(other, item.id);
    if (shapes_ground(item.thing) && (same == nullptr || same->thing != item.thing)) ids.push_back(item.id);
  }
  return ids;
}

void add(Quantities& to, Quantities more) {
  to.lines.insert(to.lines.end(), more.lines.begin(), more.lines.end());
  to.left_out.insert(to.left_out.end(), more.left_out.begin(), more.left_out.end());
}

void sort(Quantities& quantities) {
  std::ranges::stable_sort(quantities.lines, [](const QuantityLine& a, const QuantityLine& b) {
    return std::tie(a.work, a.size_m) < std::tie(b.work, b.size_m);
  });
}

Quantities without_earth(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  return Count{site, surface, catalogs}.take();
}

/// The lines of `from` less every part that `other` has too.
std::vector<QuantityLine> less(const Quantities& from, const Quantities& other) {
  std::vector<QuantityLine> lines;
  for (QuantityLine line : from.lines) {
    const QuantityLine* same = find(other, line.work, line.size_m);
    if (same != nullptr)
      std::erase_if(line.parts, [&](const QuantityPart& part) { return std::ranges::count(same->parts, part) > 0; });
    if (!line.parts.empty()) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

int QuantityLine::count() const {
  int sum = 0;
  for (const QuantityPart& part : parts) sum += part.count;
  return sum;
}

double QuantityLine::amount() const {
  double sum = 0;
  for (const QuantityPart& part : parts) sum += part.amount;
  return sum;
}

const QuantityLine* find(const Quantities& quantities, Work work, const std::vector<double>& size_m) {
  const auto found = std::ranges::find_if(
      quantities.lines, [&](const QuantityLine& line) { return line.work == work && same_size(line.size_m, size_m); });
  return found == quantities.lines.end() ? nullptr : &*found;
}

double amount_of(const Quantities& quantities, Work work) {
  double sum = 0;
  for (const QuantityLine& line : quantities.lines) {
    if (line.work == work) sum += line.amount();
  }
  return sum;
}

Quantities earth_between(const LevelGrid& before, const LevelGrid& after, const Ground& ground,
                         const std::vector<ItemId>& movers) {
  Quantities earth;
  if (before.empty() || after.empty() || before.frame() != after.frame()) {
    if (!movers.empty()) earth.left_out.push_back({{}, "the ground is not known, so neither are cut and fill"});
    return earth;
  }
  const EarthBalance balance = earth_balance(earthwork(before, after), ground.shrink_ratio, ground.swell_ratio);
  const auto put = [&](Work work, double m3) {
    if (m3 > 0) earth.lines.push_back({work, {}, {{movers, 1, m3}}});
  };
  put(Work::cut, balance.earth.cut_m3);
  put(Work::fill, balance.earth.fill_m3);
  put(Work::earth_brought, -balance.left_over_m3());
  put(Work::earth_left_over, balance.left_over_m3());
  return earth;
}

Quantities quantities(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  Quantities found = without_earth(site, surface, catalogs);
  add(found, earth_between(surface.existing, surface.design, site.ground, earth_movers(site, {})));
  sort(found);
  return found;
}

QuantityChange quantity_change(const Site& before, const Site& after, const Catalogs& catalogs) {
  const DesignSurface was = design_surface(before), becomes = design_surface(after);
  return quantity_change(YardState{before, was}, YardState{after, becomes}, catalogs);
}

QuantityChange quantity_change(const YardState& before, const YardState& after, const Catalogs& catalogs) {
  const Quantities old = without_earth(before.site, before.surface, catalogs),
                   fresh = without_earth(after.site, after.surface, catalogs);
  QuantityChange change{{less(fresh, old), fresh.left_out}, {less(old, fresh), {}}};
  std::vector<ItemId> movers = earth_movers(after.site, before.site);
  std::ranges::copy(earth_movers(before.site, after.site), std::back_inserter(movers));
  add(change.built, earth_between(before.surface.design, after.surface.design, after.site.ground, movers));
  sort(change.built);
  sort(change.gone);
  return change;
}

}  // namespace yardwright::grow
