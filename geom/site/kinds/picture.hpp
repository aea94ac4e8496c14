// A picture of the yard laid under the plan to trace from. It lies beside the site file.
#pragma once

#include <string>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Picture {
  static constexpr std::string_view key = "picture";
  static constexpr std::string_view label = "picture";

  SitePoint at;
  Bearing facing;
  std::string file;
  double width_m = 100.0;
  double proportion_ratio = 1.0;
  double strength_ratio = 0.6;

  bool operator==(const Picture&) const = default;
};

inline double height_m(const Picture& picture) { return picture.width_m * picture.proportion_ratio; }

template <MaybeConst<Picture> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "of the middle of the picture"}, self.at);
  visit(Field{"facing", "facing", "the way the top of the picture looks", Quantity::bearing}, self.facing);
  visit(Field{"file", "file", "its name, in the folder of the site file"}, self.file);
  visit(Field{"width", "width", "of the whole picture on the ground", Quantity::length, 0.1, 100000}, self.width_m);
  visit(Field{"proportion", "proportion", "its height over its width", Quantity::ratio, 0.001, 1000},
        self.proportion_ratio);
  visit(Field{"strength", "strength", "1 is opaque, 0 is unseen", Quantity::ratio, 0, 1}, self.strength_ratio);
}

}  // namespace yardwright
