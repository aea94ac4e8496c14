#include "editor/session/handles.hpp"

#include <algorithm>
#include <cmath>

#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

/// The sides of a box as its kind names them; null where a kind has no such size.
struct Sides {
  SitePoint* at = nullptr;
  Bearing* facing = nullptr;
  double* length_m = nullptr;
  double* width_m = nullptr;
  double kept_length_m = 2;  ///< where the length follows from something else
};

template <class Kind>
Sides sides_of(Kind& kind) {
  Sides sides;
  if constexpr (requires { kind.facing; }) {
    sides.at = &kind.at;
    sides.facing = &kind.facing;
    if constexpr (requires { kind.length_m; }) sides.length_m = &kind.length_m;
    if constexpr (requires { kind.width_m; }) sides.width_m = &kind.width_m;
    if constexpr (requires { kind.body; }) {
      sides.length_m = &kind.body.length_m;
      sides.width_m = &kind.body.width_m;
    }
  }
  return sides;
}

Sides sides_of(Thing& thing) {
  Sides sides = std::visit([](auto& kind) { return sides_of(kind); }, thing);
  if (const Picture* picture = std::get_if<Picture>(&thing)) sides.kept_length_m = height_m(*picture);
  return sides;
}

double half(const double* size_m, double kept_m = 2) { return size_m == nullptr ? kept_m / 2 : *size_m / 2; }

void add_box_handles(std::vector<Handle>& handles, const Sides& sides, double arm_m) {
  const SiteVector ahead = direction(*sides.facing), right = right_of(ahead);
  const double half_length = half(sides.length_m, sides.kept_length_m), half_width = half(sides.width_m);
  for (const int side : {0, 1}) {
    const double sign = side == 0 ? 1 : -1;
    if (sides.length_m != nullptr)
      handles.push_back({Grip::length_side, *sides.at + ahead * (sign * half_length), side});
    if (sides.width_m != nullptr) handles.push_back({Grip::width_side, *sides.at + right * (sign * half_width), side});
  }
  handles.push_back({Grip::turn, *sides.at + ahead * (half_length + arm_m), 0});
}

void add_path_handles(std::vector<Handle>& handles, const SitePath& path, bool closed) {
  const int count = static_cast<int>(path.size());
  for (int i = 0; i < count; ++i) handles.push_back({Grip::corner, path[static_cast<std::size_t>(i)], i});
  for (int i = 0; i + (closed ? 0 : 1) < count && count > 1; ++i) {
    const SitePoint next = path[static_cast<std::size_t>((i + 1) % count)];
    handles.push_back({Grip::new_corner, between(path[static_cast<std::size_t>(i)], next, 0.5), i + 1});
  }
}

void add_wall_handles(std::vector<Handle>& handles, SitePoint centre, double radius_m) {
  const SiteVector ways[] = {{1, 0}, {0, 1}, {-1, 0}, {0, -1}};
  for (int i = 0; i < 4; ++i) handles.push_back({Grip::wall, centre + ways[i] * radius_m, i});
}

/// The dragged side follows, the far side stays where it is.
void drag_side(const Sides& sides, double* size_m, SiteVector outward, SitePoint to) {
  if (size_m == nullptr) return;
  const SitePoint far_side = *sides.at - outward * (*size_m / 2);
  *size_m = std::max(dot(to - far_side, outward), 0.3);
  *sides.at = far_side + outward * (*size_m / 2);
}

void drag_wall(Thing& thing, SitePoint to) {
  std::visit(
      [&](auto& kind) {
        if constexpr (requires {
                        kind.at;
                        kind.diameter_m;
                      })
          kind.diameter_m = 2 * distance(kind.at, to);
      },
      thing);
}

void drag_corner(Thing& thing, const Handle& handle, SitePoint to) {
  SitePath* path = path_of(thing);
  if (path == nullptr || handle.index < 0 || handle.index > static_cast<int>(path->size())) return;
  if (handle.grip == Grip::new_corner)
    path->insert(path->begin() + handle.index, to);
  else if (handle.index < static_cast<int>(path->size()))
    (*path)[static_cast<std::size_t>(handle.index)] = to;
}

struct Clamp {
  void operator()(const Field& field, double& value) const { value = std::clamp(value, field.least, field.most); }
  template <class Member>
  void operator()(const Field&, Member& member) const {
    if constexpr (requires { visit_fields(member, *this); }) visit_fields(member, *this);
  }
};

}  // namespace

std::vector<Handle> handles_of(const Thing& thing, double arm_m) {
  std::vector<Handle> handles;
  Thing copy = thing;
  const Sides sides = sides_of(copy);
  if (const Bin* bin = std::get_if<Bin>(&thing)) add_wall_handles(handles, bin->at, bin->diameter_m / 2);
  if (sides.facing != nullptr) add_box_handles(handles, sides, arm_m);
  if (const SitePath* path = path_of(thing)) add_path_handles(handles, *path, is_ring(thing));
  return handles;
}

Thing dragged(Thing thing, const Handle& handle, SitePoint to) {
  const Sides sides = sides_of(thing);
  const double sign = handle.index == 0 ? 1 : -1;
  switch (handle.grip) {
    case Grip::wall: drag_wall(thing, to); break;
    case Grip::length_side:
      if (sides.facing != nullptr) drag_side(sides, sides.length_m, direction(*sides.facing) * sign, to);
      break;
    case Grip::width_side:
      if (sides.facing != nullptr) drag_side(sides, sides.width_m, right_of(direction(*sides.facing)) * sign, to);
      break;
    case Grip::turn:
      if (sides.facing != nullptr) *sides.facing = bearing_of(to - *sides.at);
      break;
    case Grip::corner:
    case Grip::new_corner: drag_corner(thing, handle, to); break;
  }
  return within_limits(std::move(thing));
}

SitePoint turned_in_steps(SitePoint pivot, SitePoint to, Angle step) {
  const double steps = std::round(bearing_of(to - pivot).as_degrees() / step.as_degrees());
  return pivot + direction(Bearing::degrees(steps * step.as_degrees())) * distance(pivot, to);
}

Thing within_limits(Thing thing) {
  std::visit([](auto& kind) { visit_fields(kind, Clamp{}); }, thing);
  return thing;
}

}  // namespace yardwright::session
