#include "geom/clear/working_room.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright::clear {

namespace {

/// A strip that is free this far is free.
double look_m(const Rule& rule) { return std::max(30.0, 2 * rule.value); }

/// Along the face's look (x) and to its left (y).
SiteVector seen_from(const Pose& face, SitePoint point) {
  const SiteVector ahead = direction(face.facing), v = point - face.at;
  return {dot(v, ahead), dot(v, left_of(ahead))};
}

double depth_to(SiteVector centre, double radius_m, double half_width_m) {
  const double off_m = std::max(0.0, std::abs(centre.y) - half_width_m);
  if (off_m >= radius_m) return nothing_in_front;
  const double half_chord_m = std::sqrt(radius_m * radius_m - off_m * off_m);
  return centre.x + half_chord_m <= 0 ? nothing_in_front : centre.x - half_chord_m;
}

/// The nearest x ahead of the face of the part of a side that lies within the strip.
double depth_to(SiteVector a, SiteVector b, double half_width_m) {
  if (a.y > b.y) std::swap(a, b);
  if (b.y <= -half_width_m || a.y >= half_width_m) return nothing_in_front;
  const auto x_at = [&](double y) { return b.y > a.y ? a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y) : a.x; };
  const bool straight_on = b.y == a.y;
  const double low_m = straight_on ? std::min(a.x, b.x) : x_at(std::max(a.y, -half_width_m));
  const double high_m = straight_on ? std::max(a.x, b.x) : x_at(std::min(b.y, half_width_m));
  return std::max(low_m, high_m) <= 0 ? nothing_in_front : std::min(low_m, high_m);
}

double depth_to(const Pose& face, const Polygon& polygon, double half_width_m) {
  double nearest_m = nothing_in_front;
  for (std::size_t i = 0; i < polygon.outer.size(); ++i) {
    const SiteVector a = seen_from(face, polygon.outer[i]);
    const SiteVector b = seen_from(face, polygon.outer[(i + 1) % polygon.outer.size()]);
    nearest_m = std::min(nearest_m, depth_to(a, b, half_width_m));
  }
  return nearest_m < nothing_in_front && contains(polygon, face.at) ? 0 : nearest_m;
}

/// Where people work at a thing, or nothing.
using FaceOf = std::optional<Pose> (*)(const Item&);

Pose wall_face(const Bin& bin, Bearing side) { return {bin.at + direction(side) * (bin.diameter_m / 2), side}; }

std::optional<Pose> fan_face(const Item& item) {
  const Bin* bin = as<Bin>(item);
  return bin == nullptr ? std::nullopt : std::optional{wall_face(*bin, bin->fan_side)};
}

std::optional<Pose> unload_face(const Item& item) {
  const Bin* bin = as<Bin>(item);
  return bin == nullptr ? std::nullopt : std::optional{wall_face(*bin, bin->unload_side)};
}

std::optional<Pose> dryer_face(const Item& item) {
  const Dryer* dryer = as<Dryer>(item);
  if (dryer == nullptr) return std::nullopt;
  return Pose{dryer->at + direction(dryer->facing) * (dryer->length_m / 2), dryer->facing};
}

constexpr Parts in_the_way = part::bin | part::dryer | part::farm_building | part::control_room | part::dwelling |
                             part::lp_tank | part::ammonia_tank | part::well | part::receiving | part::leg;

Gap free_ahead(const Solid& of, const Pose& face, const Rule& rule) {
  const double free_m = look_m(rule);
  const SitePoint end = face.at + direction(face.facing) * free_m;
  return {&rule, free_m, rule.value, of.item->id, {}, {face.at, end, free_m}, Verdict::caution, true};
}

std::optional<Gap> room_before(const Solid& of, const Solid& other, const Rule& rule, double width_m, FaceOf face_of,
                               double below_m) {
  if (!fills_rooms(other)) return std::nullopt;
  // The wall is nowhere nearer than the boxes.
  if (distance_m(of.box, other.box) - rule.value >= std::min(std::max(below_m, 0.0), look_m(rule))) return std::nullopt;
  const auto face = face_of(*of.item);
  if (!face) return std::nullopt;
  const double depth_m = free_depth_m(*face, width_m, other.outline);
  if (depth_m >= look_m(rule)) return std::nullopt;
  const SitePoint end = face->at + direction(face->facing) * depth_m;
  return Gap{&rule, depth_m, rule.value, of.item->id, other.item->id, {face->at, end, depth_m}, Verdict::caution};
}

const Gap* smaller(const std::optional<Gap>& a, const std::optional<Gap>& b) {
  if (!a || !b) return a ? &*a : b ? &*b : nullptr;
  return a->margin_m() <= b->margin_m() ? &*a : &*b;
}

/// Its own room, and the rooms of others that it stands in.
Check room_check(std::string_view rule_id, Parts of, FaceOf face_of, std::string passes, std::string breaks,
                 const RuleBook& rules) {
  const Rule* rule = &rules.at(rule_id);
  const double width_m = rules.at("clear.working-width").value;
  const BetweenTwo between = [=](const Solid& one, const Solid& two, const Yard&,
                                 double below_m) -> std::optional<Gap> {
    const auto before_one = room_before(one, two, *rule, width_m, face_of, below_m);
    const auto before_two = room_before(two, one, *rule, width_m, face_of, below_m);
    const Gap* tighter = smaller(before_one, before_two);
    return tighter != nullptr ? std::optional{*tighter} : std::nullopt;
  };
  Check check;
  check.tightest = [=](const Solid& solid, const Yard& yard, double below_m) -> std::optional<Gap> {
    if (auto gap = tightest_of(solid, yard, below_m, between)) return gap;
    const auto face = face_of(*solid.item);
    if (!face || look_m(*rule) - rule->value >= below_m) return std::nullopt;
    return free_ahead(solid, *face, *rule);
  };
  check.starts_from = of;
  check.passes = std::move(passes);
  check.breaks = std::move(breaks);
  check.note = "room to service it, and to take it out";
  return check;
}

/// On its wider side, where a person climbs down.
std::optional<Gap> beside_boot(const Solid& solid, const Yard& yard, double below_m) {
  const Leg* one = as<Leg>(*solid.item);
  if (one == nullptr || one->boot.depth_m <= 0) return std::nullopt;
  const Rule& rule = yard.rules.at("clear.boot-room");
  const double beside_m = (std::max(one->boot.length_m, one->boot.width_m) - one->tower_width_m) / 2;
  if (beside_m - rule.value >= below_m) return std::nullopt;
  return Gap{&rule, beside_m, rule.value, solid.item->id, {}, {one->at, one->at, beside_m}, Verdict::caution};
}

}  // namespace

double free_depth_m(const Pose& face, double width_m, const Outline& outline) {
  double depth_m = nothing_in_front;
  if (const Disc* disc = std::get_if<Disc>(&outline))
    depth_m = depth_to(seen_from(face, disc->centre), disc->radius_m, width_m / 2);
  else
    depth_m = depth_to(face, std::get<Polygon>(outline), width_m / 2);
  return std::max(0.0, depth_m);
}

Polygon Room::area() const {
  const SiteVector ahead = direction(face.facing);
  return rectangle({face.at + ahead * (rule->value / 2), face.facing}, rule->value, width_m);
}

std::vector<Room> rooms_of(const Item& item, const RuleBook& rules) {
  const double width_m = rules.at("clear.working-width").value;
  std::vector<Room> rooms;
  const auto add = [&](std::string_view rule, FaceOf face_of) {
    if (const auto face = face_of(item)) rooms.push_back({&rules.at(rule), *face, width_m});
  };
  add("clear.fan-room", fan_face);
  add("clear.unload-room", unload_face);
  add("clear.dryer-room", dryer_face);
  return rooms;
}

bool fills_rooms(const Solid& solid) { return (solid.part & in_the_way) != 0; }

std::vector<Check> room_checks(const RuleBook& rules) {
  std::vector<Check> checks{room_check("clear.fan-room", part::bin, fan_face, "Fans have room",
                                       "leaves too little room at the fan to", rules),
                            room_check("clear.unload-room", part::bin, unload_face, "Unload tubes have room",
                                       "leaves too little room at the unload tube to", rules),
                            room_check("clear.dryer-room", part::dryer, dryer_face, "The dryer's end has room",
                                       "leaves too little room at its end to", rules)};
  Check boot;
  boot.tightest = beside_boot;
  boot.starts_from = part::leg;
  boot.passes = "Boots have room in their pits";
  boot.breaks = "has too little room beside its boot";
  boot.note = "a pit is a confined space: nobody enters it alone or with the leg running";
  checks.push_back(std::move(boot));
  return checks;
}

}  // namespace yardwright::clear
