// Points and vectors typed by their frame, so that site metres, paper millimetres and screen pixels cannot be
// mixed. Site frame: metres east (x) and north (y) of the site's origin. Sheet frame: millimetres right (x) and
// down (y) from the paper's top left corner. Screen frame: pixels right and down.
#pragma once

#include <cmath>
#include <compare>
#include <vector>

#include "geom/units/bearing.hpp"

namespace yardwright {

template <class Frame>
struct VectorIn {
  double x = 0;
  double y = 0;
  bool operator==(const VectorIn&) const = default;
  VectorIn operator+(VectorIn other) const { return {x + other.x, y + other.y}; }
  VectorIn operator-(VectorIn other) const { return {x - other.x, y - other.y}; }
  VectorIn operator*(double factor) const { return {x * factor, y * factor}; }
  VectorIn operator-() const { return {-x, -y}; }
};

template <class Frame>
struct PointIn {
  double x = 0;
  double y = 0;
  bool operator==(const PointIn&) const = default;
  PointIn operator+(VectorIn<Frame> by) const { return {x + by.x, y + by.y}; }
  PointIn operator-(VectorIn<Frame> by) const { return {x - by.x, y - by.y}; }
  VectorIn<Frame> operator-(PointIn other) const { return {x - other.x, y - other.y}; }
};

struct SiteFrame {};
struct SheetFrame {};
struct ScreenFrame {};

using SitePoint = PointIn<SiteFrame>;
using SiteVector = VectorIn<SiteFrame>;
using SheetPoint = PointIn<SheetFrame>;
using SheetVector = VectorIn<SheetFrame>;
using ScreenPoint = PointIn<ScreenFrame>;
using ScreenVector = VectorIn<ScreenFrame>;

/// An open polyline; a lone point or nothing where a drawing has just begun.
using SitePath = std::vector<SitePoint>;

template <class Frame>
double dot(VectorIn<Frame> a, VectorIn<Frame> b) {
  return a.x * b.x + a.y * b.y;
}

/// Positive where `b` lies to the left (counter-clockwise) of `a` in a frame whose y goes up.
template <class Frame>
double cross(VectorIn<Frame> a, VectorIn<Frame> b) {
  return a.x * b.y - a.y * b.x;
}

template <class Frame>
double length(VectorIn<Frame> v) {
  return std::sqrt(dot(v, v));  // sites are no wider than squares can hold; hypot costs ten times as much
}

template <class Frame>
double distance(PointIn<Frame> a, PointIn<Frame> b) {
  return length(a - b);
}

template <class Frame>
PointIn<Frame> between(PointIn<Frame> a, PointIn<Frame> b, double part) {
  return a + (b - a) * part;
}

/// The unit vector; a zero vector stays zero.
template <class Frame>
VectorIn<Frame> unit(VectorIn<Frame> v) {
  const double size = length(v);
  return size > 0 ? v * (1 / size) : v;
}

/// A quarter turn to the left.
inline SiteVector left_of(SiteVector v) { return {-v.y, v.x}; }
inline SiteVector right_of(SiteVector v) { return {v.y, -v.x}; }

inline SiteVector direction(Bearing bearing) { return {bearing.east(), bearing.north()}; }
inline Bearing bearing_of(SiteVector v) { return Bearing::of(v.x, v.y); }

/// `point` turned clockwise about `pivot`.
inline SitePoint turned(SitePoint point, SitePoint pivot, Angle clockwise) {
  const SiteVector v = point - pivot;
  const double c = cos(clockwise), s = sin(clockwise);
  return pivot + SiteVector{v.x * c + v.y * s, v.y * c - v.x * s};
}

/// A place and the way it faces.
struct Pose {
  SitePoint at;
  Bearing facing;
  bool operator==(const Pose&) const = default;
};

}  // namespace yardwright
