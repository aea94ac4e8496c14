// Places on the command line: "120,340" or "36ft,11m", east and north of the site's origin.
#pragma once

#include <optional>
#include <string>

#include "geom/shape/point.hpp"
#include "geom/units/problem.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright::cli {

/// Two parts around a comma, each read by `number_of`.
template <class NumberOf>
Expected<SitePoint> pair_of(const std::string& text, const char* option, const char* mend, NumberOf number_of) {
  const std::size_t comma = text.find(',');
  const auto x = comma == std::string::npos ? std::optional<double>{} : number_of(text.substr(0, comma));
  const auto y = comma == std::string::npos ? std::optional<double>{} : number_of(text.substr(comma + 1));
  if (!x || !y) return refused("\"" + text + "\" is not understood", option, mend);
  return SitePoint{*x, *y};
}

/// A bare number is in the unit in which the site shows lengths.
Expected<SitePoint> site_place(const std::string& text, const char* option, UnitSystem units);

}  // namespace yardwright::cli
