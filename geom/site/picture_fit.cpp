#include "geom/site/picture_fit.hpp"

#include <fmt/format.h>

#include "geom/shape/point.hpp"

namespace yardwright {

namespace {

constexpr double least_apart_m = 1e-6;
constexpr double least_width_m = 0.1, most_width_m = 100'000;  // as the picture's own field

tl::unexpected<Problem> refuse(std::string what, std::string mend) {
  return tl::unexpected{Problem{std::move(what), "the picture", std::move(mend)}};
}

}  // namespace

tl::expected<Picture, Problem> fitted(const Picture& picture, const PointPair& from, const PointPair& to) {
  const double seen_m = distance(from.a, from.b), known_m = distance(to.a, to.b);
  if (!(seen_m > least_apart_m))
    return refuse("both points of it are the same", "choose two points that lie far apart");
  if (!(known_m > least_apart_m))
    return refuse("both points would come to lie at the same place", "give two places that lie apart");
  const double scale = known_m / seen_m;
  const Angle turn = Angle::degrees(bearing_of(to.b - to.a).as_degrees() - bearing_of(from.b - from.a).as_degrees());
  Picture out = picture;
  out.width_m = picture.width_m * scale;
  if (!(out.width_m >= least_width_m && out.width_m <= most_width_m)) {
    return refuse(fmt::format("it would be {:.3g} m wide", out.width_m),
                  "look at the two points and at what lies between them");
  }
  out.facing = picture.facing.turned(turn);
  out.at = to.a + (turned(picture.at, from.a, turn) - from.a) * scale;
  return out;
}

tl::expected<Picture, Problem> fitted_to_distance(const Picture& picture, const PointPair& seen, double distance_m) {
  const double seen_m = distance(seen.a, seen.b);
  if (!(distance_m > least_apart_m))
    return refuse("the distance between the points is no length", "type it as 36ft or 11m");
  const double scale = seen_m > least_apart_m ? distance_m / seen_m : 1;
  return fitted(picture, seen, {seen.a, seen.a + (seen.b - seen.a) * scale});
}

SitePoint carried(SitePoint point, const Picture& before, const Picture& after) {
  const SiteVector up = direction(before.facing), from_middle = point - before.at;
  const double right_ratio = dot(from_middle, right_of(up)) / before.width_m + 0.5,
               down_ratio = 0.5 - dot(from_middle, up) / height_m(before);
  return place_in_picture(after, right_ratio, down_ratio);
}

SitePoint place_in_picture(const Picture& picture, double right_ratio, double down_ratio) {
  const SiteVector up = direction(picture.facing), right = right_of(up);
  return picture.at + right * ((right_ratio - 0.5) * picture.width_m) - up * ((down_ratio - 0.5) * height_m(picture));
}

}  // namespace yardwright
