#include "geom/turn/driving.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace yardwright::turn {

namespace {

using Headings = std::vector<double>;  // of each unit, radians counter-clockwise from east, not wrapped

/// A Runge-Kutta step longer than this part of the shortest wheelbase would lose digits.
constexpr double longest_step_in_wheelbases = 0.2;

/// Rates of the headings for one metre of the front axle, which goes towards `way_rad`. With phi a heading, L a
/// wheelbase, K a hitch ahead of its axle, v the speed of an axle along its unit and w a rate of turn:
///   front unit  w = sin(way - phi)/L                          v = cos(way - phi)
///   next unit   w' = (v sin d + K w cos d)/L'                 v' = v cos d - K w sin d      d = phi - phi'
void rates(const Vehicle& vehicle, const Headings& phi, double way_rad, Headings& out) {
  double speed = std::cos(way_rad - phi[0]);
  out[0] = std::sin(way_rad - phi[0]) / vehicle.units[0].wheelbase_m;
  for (std::size_t i = 1; i < phi.size(); ++i) {
    const double d = phi[i - 1] - phi[i], c = std::cos(d), s = std::sin(d);
    const double swing = vehicle.units[i - 1].hitch_m * out[i - 1];
    out[i] = (speed * s + swing * c) / vehicle.units[i].wheelbase_m;
    speed = speed * c - swing * s;
  }
}

class Integrator {
 public:
  Integrator(const Vehicle& vehicle, double start_rad)
      : vehicle_{vehicle},
        phi_(vehicle.units.size(), start_rad),
        trial_{phi_},
        k1_{phi_},
        k2_{phi_},
        k3_{phi_},
        k4_{phi_} {
    double least_m = vehicle.units.front().wheelbase_m;
    for (const VehicleUnit& unit : vehicle.units) least_m = std::min(least_m, unit.wheelbase_m);
    longest_step_m_ = least_m * longest_step_in_wheelbases;
  }

  const Headings& headings() const { return phi_; }

  /// Over a distance in which the way ahead turns evenly.
  void advance(double way_rad, double curvature_per_m, double distance_m) {
    const int steps = std::max(1, static_cast<int>(std::ceil(distance_m / longest_step_m_)));
    const double step_m = distance_m / steps;
    for (int i = 0; i < steps; ++i) step(way_rad + curvature_per_m * step_m * i, curvature_per_m, step_m);
  }

 private:
  void step(double way_rad, double curvature_per_m, double h) {
    const double middle_rad = way_rad + curvature_per_m * h / 2, end_rad = way_rad + curvature_per_m * h;
    rates(vehicle_, phi_, way_rad, k1_);
    rates(vehicle_, moved(k1_, h / 2), middle_rad, k2_);
    rates(vehicle_, moved(k2_, h / 2), middle_rad, k3_);
    rates(vehicle_, moved(k3_, h), end_rad, k4_);
    for (std::size_t i = 0; i < phi_.size(); ++i) phi_[i] += h / 6 * (k1_[i] + 2 * k2_[i] + 2 * k3_[i] + k4_[i]);
  }

  const Headings& moved(const Headings& rate, double by_m) {
    for (std::size_t i = 0; i < phi_.size(); ++i) trial_[i] = phi_[i] + by_m * rate[i];
    return trial_;
  }

  const Vehicle& vehicle_;
  Headings phi_, trial_, k1_, k2_, k3_, k4_;
  double longest_step_m_ = 0;
};

/// Sets the chain down behind its front axle and keeps its poses.
void record(Driven& driven, const Vehicle& vehicle, SitePoint front_axle, const Headings& phi, double station_m) {
  SitePoint pulled_at = front_axle;
  driven.stations_m.push_back(station_m);
  for (std::size_t i = 0; i < phi.size(); ++i) {
    const SiteVector ahead{std::cos(phi[i]), std::sin(phi[i])};
    const SitePoint axle = pulled_at - ahead * vehicle.units[i].wheelbase_m;
    driven.poses.push_back({axle, ahead});
    pulled_at = axle + ahead * vehicle.units[i].hitch_m;
    if (i == 0) continue;
    const Angle angle = Angle::radians(std::abs(phi[i - 1] - phi[i]));
    if (angle > driven.greatest_hitch.angle) driven.greatest_hitch = {angle, station_m, i - 1};
  }
}

/// The way ahead at the start of a piece, unwrapped so that it lies near the one before.
double way_near(SiteVector ahead, double before_rad) {
  const double way = std::atan2(ahead.y, ahead.x);
  return way + 2 * std::numbers::pi * std::round((before_rad - way) / (2 * std::numbers::pi));
}

}  // namespace

UnitPose between(const UnitPose& a, const UnitPose& b, double part) {
  const double t = part, t2 = t * t, t3 = t2 * t, chord_m = distance(a.axle, b.axle);
  const SiteVector curve =
      (b.axle - a.axle) * (3 * t2 - 2 * t3) + a.ahead * (chord_m * (t3 - 2 * t2 + t)) + b.ahead * (chord_m * (t3 - t2));
  return {a.axle + curve, unit(a.ahead * (1 - t) + b.ahead * t)};
}

Driven drive(const Vehicle& vehicle, const Course& course, double step_m) {
  assert(step_m > 0);
  Driven driven;
  if (vehicle.units.empty() || course.pieces.empty()) return driven;
  driven.units = vehicle.units.size();
  double way_rad = way_near(course.pieces.front().ahead, 0), before_m = 0;
  Integrator chain{vehicle, way_rad};
  record(driven, vehicle, course.pieces.front().start, chain.headings(), 0);
  for (const CoursePiece& piece : course.pieces) {
    way_rad = way_near(piece.ahead, way_rad);
    const int steps = std::max(1, static_cast<int>(std::ceil(piece.length_m / step_m)));
    const double each_m = piece.length_m / steps;
    for (int i = 0; i < steps; ++i) {
      chain.advance(way_rad + piece.curvature_per_m * each_m * i, piece.curvature_per_m, each_m);
      const double done_m = each_m * (i + 1);
      record(driven, vehicle, point_on(piece, done_m).at, chain.headings(), before_m + done_m);
    }
    way_rad += piece.curvature_per_m * piece.length_m;
    before_m += piece.length_m;
  }
  return driven;
}

}  // namespace yardwright::turn
