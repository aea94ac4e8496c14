// How a kind describes its own fields, once, for everyone who handles all kinds alike: the site file, its JSON
// Schema, the editor's property panel, the format page, moving and turning. A kind offers
//   visit_fields(kind, visit)  ->  visit(Field{...}, kind.member) for each member, in file order.
// A visitor is called with members of these types: double, int, bool, std::string, Angle, Bearing, an enum with
// names_of(), ItemId, std::vector<ItemId>, SitePoint, SitePath, or a struct that has visit_fields itself. The
// site's own parts add a vector of an enum (the lot's edges), a MassCurve and a RainTable (the storm's).
#pragma once

#include <compare>
#include <concepts>
#include <limits>
#include <string_view>
#include <type_traits>

#include "geom/shape/point.hpp"
#include "geom/units/grain_volume.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

/// For the defaults of kinds, which are round numbers in feet and bushels; exact, so that a US file says 36.
inline constexpr double foot_m = 0.3048;
inline constexpr double bushels_an_hour = cubic_metres_per_bushel / 3600;

/// Names one item of a site; ids are never used again in the same site. Zero names nothing.
struct ItemId {
  int number = 0;
  explicit operator bool() const { return number != 0; }
  auto operator<=>(const ItemId&) const = default;
};

struct Field {
  std::string_view key;    ///< in the file
  std::string_view label;  ///< in the window
  std::string_view means;  ///< one sentence, for the format page and the tooltip
  Quantity quantity = Quantity::ratio;
  double least = -std::numeric_limits<double>::infinity();  ///< in SI; degrees for angles
  double most = std::numeric_limits<double>::infinity();
  bool closed = false;  ///< a SitePath that is a ring
};

/// A SitePath that is a ring: its last corner joins its first.
constexpr Field ring_field(std::string_view key, std::string_view label, std::string_view means) {
  Field field{key, label, means};
  field.closed = true;
  return field;
}

/// A struct that has visit_fields.
struct AnyVisit {
  template <class Member>
  void operator()(const Field&, Member&) const {}
};
template <class Struct>
concept Fielded = requires(Struct& value) {
  visit_fields(value, AnyVisit{});
};

/// `Self` is `Kind` or `const Kind`, so that one visit_fields serves reading and writing.
template <class Self, class Kind>
concept MaybeConst = std::same_as<std::remove_const_t<Self>, Kind>;

}  // namespace yardwright
