// The numbers of a thing in the order of its fields: lengths, angles, bearings, and the places of its corners. By them a
// change can be gone by a part, whatever kind is changed.
#pragma once

#include <variant>
#include <vector>

#include "geom/site/item.hpp"

namespace yardwright::grow {

struct Number {
  std::variant<double*, Angle*, Bearing*> at;
  Field field;
  bool is_place = false;  ///< one part of a point; those of a point follow each other

  double value() const;  ///< degrees for angles and bearings
  void set(double value) const;
  bool is_bearing() const { return std::holds_alternative<Bearing*>(at); }
  bool allows(double value) const { return is_bearing() || (value >= field.least && value <= field.most); }
};

/// They point into the thing.
std::vector<Number> numbers_of(Thing& thing);

/// From one to the other: the short way around where both are bearings.
double difference(const Number& from, const Number& to);

}  // namespace yardwright::grow
