#include "geom/site/footprint.hpp"

#include "geom/shape/overloaded.hpp"

namespace yardwright {

namespace {

constexpr double well_radius_m = 0.15;

/// Calls `change(member)` on every member of the given type, of any kind.
template <class Member, class Change>
void change_members(Thing& thing, Change change) {
  std::visit(
      [&](auto& kind) {
        visit_fields(kind, [&](const Field&, auto& member) {
          if constexpr (std::same_as<std::remove_cvref_t<decltype(member)>, Member>) change(member);
        });
      },
      thing);
}

template <class Kind>
Outline box_outline(const Kind& kind, double length_m, double width_m) {
  return rectangle({kind.at, kind.facing}, length_m, width_m);
}

}  // namespace

std::optional<Outline> footprint(const Thing& thing) {
  using Result = std::optional<Outline>;
  return std::visit(
      Overloaded{
          [](const Bin& bin) {
            return Result{Disc{bin.at, bin.diameter_m / 2}};
          },
          [](const Leg& leg) { return Result{box_outline(leg, leg.tower_width_m, leg.tower_width_m)}; },
          [](const Dryer& dryer) { return Result{box_outline(dryer, dryer.length_m, dryer.width_m)}; },
          [](const OverheadHolding& bin) { return Result{box_outline(bin, bin.stand_width_m, bin.stand_width_m)}; },
          [](const Receiving& dump) { return Result{box_outline(dump, dump.length_m, dump.width_m)}; },
          [](const Scale& scale) { return Result{box_outline(scale, scale.length_m, scale.width_m)}; },
          [](const Building& building) { return Result{box_outline(building, building.length_m, building.width_m)}; },
          [](const Tank& tank) { return Result{box_outline(tank, tank.length_m, tank.diameter_m)}; },
          [](const Well& well) {
            return Result{Disc{well.at, well_radius_m}};
          },
          [](const RetainingWall& wall) {
            Region area = strip(wall.path, wall.thickness_m);
            return area.empty() ? Result{} : Result{std::move(area.front())};
          },
          [](const auto&) { return Result{}; },
      },
      thing);
}

PitBody* pit_body(Thing& thing) {
  PitBody* body = nullptr;
  if (Leg* leg = std::get_if<Leg>(&thing)) body = &leg->boot;
  if (Receiving* dump = std::get_if<Receiving>(&thing)) body = &dump->pit;
  if (Pit* pit = std::get_if<Pit>(&thing)) body = &pit->body;
  return body != nullptr && body->depth_m > 0 ? body : nullptr;
}

const PitBody* pit_body(const Thing& thing) { return pit_body(const_cast<Thing&>(thing)); }

std::optional<Polygon> pit_hole(const Thing& thing) {
  const PitBody* body = pit_body(thing);
  if (body == nullptr) return std::nullopt;
  Bearing facing;
  std::visit(
      [&](const auto& kind) {
        if constexpr (requires { kind.facing; }) facing = kind.facing;
      },
      thing);
  return rectangle({place_of(thing), facing}, body->length_m, body->width_m);
}

SitePath* path_of(Thing& thing) {
  return std::visit(
      [](auto& kind) -> SitePath* {
        if constexpr (requires { kind.path; })
          return &kind.path;
        else if constexpr (requires { kind.outline; })
          return &kind.outline;
        else
          return nullptr;
      },
      thing);
}

const SitePath* path_of(const Thing& thing) { return path_of(const_cast<Thing&>(thing)); }

bool is_ring(const Thing& thing) { return std::holds_alternative<Pad>(thing) || std::holds_alternative<Cover>(thing); }

SitePoint place_of(const Thing& thing) {
  if (const SitePath* path = path_of(thing)) return pose_at(*path, length(*path) / 2).at;
  return std::visit(
      [](const auto& kind) {
        if constexpr (requires { kind.at; })
          return kind.at;
        else
          return SitePoint{};
      },
      thing);
}

Outline extent(const Thing& thing) {
  const auto around_path = [](const SitePath& path, double width_m) -> Outline {
    Region area = strip(path, width_m);
    return area.empty() ? Polygon{path, {}} : area.front();
  };
  if (const auto solid = footprint(thing)) return *solid;
  if (const auto hole = pit_hole(thing)) return *hole;
  return std::visit(Overloaded{
                        [&](const Drive& drive) { return around_path(drive.path, drive.width_m); },
                        [&](const Conveyor& conveyor) { return around_path(conveyor.path, conveyor.width_m); },
                        [&](const Tunnel& tunnel) { return around_path(tunnel.path, tunnel.width_m); },
                        [&](const Berm& berm) {
                          return around_path(berm.path, berm.top_width_m + 2 * berm.height_m * berm.side_slope_ratio);
                        },
                        [&](const Swale& swale) { return around_path(swale.path, swale.drawn_width_m()); },
                        [&](const TrenchDrain& drain) { return around_path(drain.path, drain.width_m); },
                        [&](const ReceivingDitch& ditch) { return around_path(ditch.path, ditch.width_m); },
                        [](const CatchBasin& basin) { return box_outline(basin, basin.length_m, basin.width_m); },
                        [](const Gate& gate) -> Outline {
                          return rectangle({gate.at, gate.facing}, 1.0, gate.width_m);
                        },
                        [](const Picture& picture) -> Outline {
                          return rectangle({picture.at, picture.facing}, height_m(picture), picture.width_m);
                        },
                        [&](const Pad& pad) -> Outline {
                          return Polygon{pad.outline, {}};
                        },
                        [&](const Cover& cover) -> Outline {
                          return Polygon{cover.outline, {}};
                        },
                        [&](const auto& kind) -> Outline {
                          if constexpr (requires { kind.path; })
                            return around_path(kind.path, 0.3);
                          else if constexpr (requires { kind.at; })
                            return Polygon{{kind.at}, {}};
                          else
                            return Polygon{};
                        },
                    },
                    thing);
}

Thing moved(Thing thing, SiteVector by) {
  change_members<SitePoint>(thing, [&](SitePoint& point) { point = point + by; });
  change_members<SitePath>(thing, [&](SitePath& path) {
    for (SitePoint& point : path) point = point + by;
  });
  return thing;
}

Thing turned(Thing thing, SitePoint pivot, Angle clockwise) {
  change_members<SitePoint>(thing, [&](SitePoint& point) { point = turned(point, pivot, clockwise); });
  change_members<SitePath>(thing, [&](SitePath& path) {
    for (SitePoint& point : path) point = turned(point, pivot, clockwise);
  });
  change_members<Bearing>(thing, [&](Bearing& bearing) { bearing = bearing.turned(clockwise); });
  return thing;
}

}  // namespace yardwright
