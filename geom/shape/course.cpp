#include "geom/shape/course.hpp"

#include <algorithm>
#include <limits>

namespace yardwright {

namespace {

constexpr double no_turn_rad = 1e-9;
constexpr double straight_radius_m = std::numeric_limits<double>::infinity();

SiteVector turned_left(SiteVector v, double by_rad) {
  const double c = std::cos(by_rad), s = std::sin(by_rad);
  return {v.x * c - v.y * s, v.x * s + v.y * c};
}

double turn_rad(SiteVector in, SiteVector out) { return std::atan2(cross(in, out), dot(in, out)); }

/// The path without points that repeat the one before, which have no direction.
SitePath without_repeats(const SitePath& path) {
  SitePath kept;
  for (const SitePoint& point : path) {
    if (kept.empty() || distance(kept.back(), point) > 0) kept.push_back(point);
  }
  return kept;
}

/// The arc at a corner; radius 0 where none fits.
struct Fillet {
  double radius_m = 0;
  double tangent_m = 0;  ///< from the corner to where the arc begins
  double turn_rad = 0;
};

Fillet fillet_at(SitePoint before, SitePoint corner, SitePoint after, double wanted_m) {
  const double turn = turn_rad(unit(corner - before), unit(after - corner));
  const double half_tangent = std::tan(std::abs(turn) / 2);
  if (std::abs(turn) < no_turn_rad || wanted_m <= 0) return {0, 0, turn};
  const double room_m = std::min(distance(before, corner), distance(corner, after)) / 2;
  const double radius_m = std::min(wanted_m, room_m / half_tangent);
  if (radius_m <= no_turn_rad) return {0, 0, turn};
  return {radius_m, radius_m * half_tangent, turn};
}

void append(Course& course, const CoursePiece& piece) {
  if (piece.length_m > 0) course.pieces.push_back(piece);
}

CoursePoint end_of(const CoursePiece& piece) { return point_on(piece, piece.length_m); }

/// Radius of the joint between two pieces: 0 where the way ahead jumps.
double joint_radius_m(const CoursePiece& before, const CoursePiece& after) {
  return std::abs(turn_rad(end_of(before).ahead, after.ahead)) > 1e-6 ? 0.0 : straight_radius_m;
}

double radius_m(const CoursePiece& piece) {
  return piece.curvature_per_m == 0 ? straight_radius_m : 1 / std::abs(piece.curvature_per_m);
}

}  // namespace

Course course_of(const SitePath& drawn, double corner_radius_m) {
  const SitePath path = without_repeats(drawn);
  Course course;
  if (path.size() < 2) return course;
  SitePoint from = path.front();
  for (std::size_t i = 1; i + 1 < path.size(); ++i) {
    const SiteVector in = unit(path[i] - path[i - 1]);
    const Fillet fillet = fillet_at(path[i - 1], path[i], path[i + 1], corner_radius_m);
    const SitePoint start = path[i] - in * fillet.tangent_m;
    append(course, {from, in, distance(from, start), 0});
    if (fillet.radius_m > 0) {
      const double curvature = (fillet.turn_rad > 0 ? 1 : -1) / fillet.radius_m;
      append(course, {start, in, fillet.radius_m * std::abs(fillet.turn_rad), curvature});
    }
    from = path[i] + unit(path[i + 1] - path[i]) * fillet.tangent_m;
  }
  append(course, {from, unit(path.back() - path[path.size() - 2]), distance(from, path.back()), 0});
  return course;
}

Course single_turn(double lead_in_m, double radius, Angle turn, double lead_out_m) {
  const double turned = turn.as_radians();
  Course course;
  append(course, {{0, 0}, {1, 0}, lead_in_m, 0});
  append(course, {{lead_in_m, 0}, {1, 0}, radius * std::abs(turned), (turned > 0 ? 1 : -1) / radius});
  const CoursePoint end = course.pieces.empty() ? CoursePoint{{0, 0}, {1, 0}} : end_of(course.pieces.back());
  append(course, {end.at, end.ahead, lead_out_m, 0});
  return course;
}

double length(const Course& course) {
  double sum_m = 0;
  for (const CoursePiece& piece : course.pieces) sum_m += piece.length_m;
  return sum_m;
}

CoursePoint point_on(const CoursePiece& piece, double from_start_m) {
  if (piece.curvature_per_m == 0) return {piece.start + piece.ahead * from_start_m, piece.ahead};
  const SitePoint centre = piece.start + left_of(piece.ahead) * (1 / piece.curvature_per_m);
  const double turned = piece.curvature_per_m * from_start_m;
  return {centre + turned_left(piece.start - centre, turned), turned_left(piece.ahead, turned)};
}

CoursePoint point_on(const Course& course, double station_m) {
  if (course.pieces.empty()) return {{}, {1, 0}};
  for (const CoursePiece& piece : course.pieces) {
    if (station_m <= piece.length_m) return point_on(piece, std::max(station_m, 0.0));
    station_m -= piece.length_m;
  }
  return end_of(course.pieces.back());
}

double least_radius_m(const Course& course) {
  double least = straight_radius_m;
  for (std::size_t i = 0; i < course.pieces.size(); ++i) {
    least = std::min(least, radius_m(course.pieces[i]));
    if (i > 0) least = std::min(least, joint_radius_m(course.pieces[i - 1], course.pieces[i]));
  }
  return least;
}

double station_of_least_radius_m(const Course& course) {
  const double least = least_radius_m(course);
  double station_m = 0;
  for (std::size_t i = 0; i < course.pieces.size(); ++i) {
    const bool joint = i > 0 && joint_radius_m(course.pieces[i - 1], course.pieces[i]) == least;
    if (joint || radius_m(course.pieces[i]) == least) return station_m;
    station_m += course.pieces[i].length_m;
  }
  return 0;
}

SitePath as_path(const Course& course, double step_m) {
  SitePath path;
  for (const CoursePiece& piece : course.pieces) {
    const int chords =
        piece.curvature_per_m == 0 ? 1 : std::max(2, static_cast<int>(std::ceil(piece.length_m / step_m)));
    for (int i = 0; i < chords; ++i) path.push_back(point_on(piece, piece.length_m * i / chords).at);
  }
  if (!course.pieces.empty()) path.push_back(end_of(course.pieces.back()).at);
  return path;
}

}  // namespace yardwright
