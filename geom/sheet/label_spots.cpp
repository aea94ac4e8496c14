#include "geom/sheet/label_spots.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "geom/shape/path.hpp"
#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

constexpr double gap_mm = 0.9;           ///< between a thing and the words beside it
constexpr double least_letter_mm = 1.6;  ///< smaller is not read from a print
constexpr double inside_step_cost = 1, smaller_cost = 1.5;
constexpr double around_cost = 3, leader_cost = 12;
constexpr std::array leader_steps_mm{4.0, 7.0, 11.0, 16.0, 22.0, 30.0, 40.0};

/// Half of a thing on the paper.
struct HalfSize {
  double width_mm, height_mm;
  bool round;
};

double least_letter_of(const Label& label) {
  double least = 100;
  for (const LabelLine& line : label.lines) least = std::min(least, line.height_mm);
  return least;
}

bool fits_inside(LabelSize size, DrawVector offset, const HalfSize& half) {
  constexpr double edge_mm = 0.3;
  const double x = std::abs(offset.x) + size.width_mm / 2 + edge_mm,
               y = std::abs(offset.y) + size.height_mm / 2 + edge_mm;
  if (half.round) return std::hypot(x, y) <= half.width_mm;
  return x <= half.width_mm && y <= half.height_mm;
}

void add_inside(Label& label, SitePoint at, const HalfSize& half) {
  const double least_size = std::min(1.0, least_letter_mm / least_letter_of(label));
  for (const double size : {1.0, (1 + least_size) / 2, least_size}) {
    const LabelSize box = size_of(label, size);
    const double room_mm = half.height_mm - box.height_mm / 2;
    for (const double part : {0.0, -0.5, 0.5, -0.85, 0.85}) {
      const DrawVector offset{0, part * std::max(0.0, room_mm)};
      if (!fits_inside(box, offset, half)) continue;
      label.spots.push_back(
          {at, offset, 0, size, (1 - size) * 4 * smaller_cost + std::abs(part) * inside_step_cost, false});
    }
    if (size == least_size) break;
  }
}

/// How far along a direction the box must go from the middle of a thing to clear it.
DrawVector clear_offset(DrawVector out, LabelSize size, const HalfSize& half, double away_mm) {
  const double x = half.width_mm + size.width_mm / 2 + away_mm, y = half.height_mm + size.height_mm / 2 + away_mm;
  const double reach =
      std::min(std::abs(out.x) > 1e-9 ? x / std::abs(out.x) : 1e9, std::abs(out.y) > 1e-9 ? y / std::abs(out.y) : 1e9);
  if (!half.round || std::abs(out.x) < 1e-9 || std::abs(out.y) < 1e-9) return out * reach;
  // A round thing has no corners: nearer, until the box's own corner meets the circle.
  double low = 0, high = reach;
  for (int i = 0; i < 20; ++i) {
    const double middle = (low + high) / 2;
    const double dx = std::max(0.0, std::abs(out.x) * middle - size.width_mm / 2),
                 dy = std::max(0.0, std::abs(out.y) * middle - size.height_mm / 2);
    (std::hypot(dx, dy) < half.width_mm + away_mm ? low : high) = middle;
  }
  return out * high;
}

struct Way {
  DrawVector out;
  double cost;
};

/// Eight ways around, the preferred ones cheapest.
std::array<Way, 8> ways_around(Prefer prefer) {
  const double down = prefer == Prefer::below ? 0 : 1, right = prefer == Prefer::below ? 1 : 0;
  const double s = 1 / std::numbers::sqrt2;
  return {{{{1, 0}, right},
           {{0, 1}, down},
           {{-1, 0}, right + 0.4},
           {{0, -1}, down + 0.4},
           {{s, -s}, 1.2},
           {{s, s}, 1.3},
           {{-s, -s}, 1.5},
           {{-s, s}, 1.6}}};
}

void add_around(Label& label, SitePoint at, const HalfSize& half, Prefer prefer) {
  const LabelSize box = size_of(label);
  const double base = prefer == Prefer::inside ? around_cost : 0;
  for (const Way& way : ways_around(prefer)) {
    label.spots.push_back({at, clear_offset(way.out, box, half, gap_mm), 0, 1, base + way.cost, false});
  }
}

void add_with_leader(Label& label, SitePoint at, const HalfSize& half) {
  constexpr int directions = 16;
  const LabelSize box = size_of(label);
  for (const double away_mm : leader_steps_mm) {
    for (int i = 0; i < directions; ++i) {
      const double turn = (i + 0.5) * 2 * std::numbers::pi / directions;
      const DrawVector offset = clear_offset({std::cos(turn), std::sin(turn)}, box, half, away_mm);
      label.spots.push_back({at, offset, 0, 1, leader_cost + away_mm * 0.8, true});
    }
  }
}

/// How much the line turns under words of a half width: they stand best where it is straight.
double bend_deg(const SitePath& path, double station_m, double half_m) {
  const SiteVector before = direction(pose_at(path, station_m - half_m).facing),
                   after = direction(pose_at(path, station_m + half_m).facing);
  return std::abs(std::atan2(cross(before, after), dot(before, after))) * 180 / std::numbers::pi;
}

void sort_spots(Label& label) { std::ranges::stable_sort(label.spots, {}, &LabelSpot::cost); }

void add_all_around(Label& label, SitePoint at, const HalfSize& half, Prefer prefer) {
  label.names = at;
  label.names_radius_mm = 0.7 * std::min(half.width_mm, half.height_mm);
  if (prefer == Prefer::inside) add_inside(label, at, half);
  add_around(label, at, half, prefer);
  add_with_leader(label, at, half);
  sort_spots(label);
}

}  // namespace

void add_spots_around(Label& label, const Around& thing, Prefer prefer, double metres_per_mm) {
  add_all_around(label, thing.centre,
                 {thing.half_width_m / metres_per_mm, thing.half_height_m / metres_per_mm, thing.round}, prefer);
}

void add_spots_beside(Label& label, SitePoint at, double radius_mm) {
  add_all_around(label, at, {radius_mm, radius_mm, true}, Prefer::beside);
  label.names_radius_mm = radius_mm;
}

void add_spots_along(Label& label, const SitePath& path, const AlongLine& how, double metres_per_mm) {
  const double total_m = length(path);
  if (total_m <= 0) return;
  const LabelSize size = size_of(label);
  const double aside_mm = size.height_mm / 2 + 0.5;
  for (int i = 0; i < how.places; ++i) {
    // The middle, then ever farther to both sides of it.
    const double part = 0.5 + (i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * 0.9 / how.places;
    const double station_m = total_m * (how.from + (how.to - how.from) * part);
    const Pose pose = pose_at(path, station_m);
    const double turn_deg = turn_along_deg(direction(pose.facing));
    const double turn = turn_deg * std::numbers::pi / 180;
    const DrawVector up{std::sin(turn), -std::cos(turn)};
    const double cost = 0.5 * i + 0.1 * bend_deg(path, station_m, size.width_mm / 2 * metres_per_mm);
    if (how.set_in) label.spots.push_back({pose.at, {}, turn_deg, 1, cost, false});
    if (how.set_in) continue;
    label.spots.push_back({pose.at, up * aside_mm, turn_deg, 1, cost, false});
    label.spots.push_back({pose.at, up * -aside_mm, turn_deg, 1, cost + 0.8, false});
  }
  label.names = label.spots.front().at;
  sort_spots(label);
}

void add_spots_within(Label& label, const Polygon& area, double metres_per_mm) {
  constexpr int parts = 8;
  const Box box = box_of(area.outer);
  const SitePoint middle = centroid(area);
  const LabelSize size = size_of(label);
  const SiteVector half{size.width_mm / 2 * metres_per_mm, size.height_mm / 2 * metres_per_mm};
  const double farthest_m = std::max(1e-6, distance(box.low, box.high));
  for (int i = 0; i < parts * parts; ++i) {
    const SitePoint at{box.low.x + (box.high.x - box.low.x) * (i % parts + 0.5) / parts,
                       box.low.y + (box.high.y - box.low.y) * (i / parts + 0.5) / parts};
    const bool fits = contains(area, at - half) && contains(area, at + half) &&
                      contains(area, {at.x - half.x, at.y + half.y}) && contains(area, {at.x + half.x, at.y - half.y});
    if (fits) label.spots.push_back({at, {}, 0, 1, 3 * distance(at, middle) / farthest_m, false});
  }
  const SiteVector half_box = (box.high - box.low) * 0.5;
  add_spots_around(label, {between(box.low, box.high, 0.5), half_box.x, half_box.y, false}, Prefer::beside,
                   metres_per_mm);
  for (LabelSpot& spot : label.spots) {
    if (spot.leader || length(spot.offset_mm) > 0) spot.cost += 4;
  }
  sort_spots(label);
}

}  // namespace yardwright
