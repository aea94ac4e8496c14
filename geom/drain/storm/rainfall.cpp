#include "geom/drain/storm/rainfall.hpp"

#include "geom/drain/runoff.hpp"

namespace yardwright::drain::storm {

std::optional<Rainfall> Rainfall::of(const Storm& storm, const Catalogs& catalogs) {
  MassCurve curve = curve_of(storm.type, storm.own_curve, catalogs.storms);
  if (!curve.known()) return std::nullopt;
  return Rainfall{storm.rain_m, std::move(curve)};
}

double Rainfall::fallen_m(double since_start_s) const { return rain_m_ * curve_.fallen_ratio(since_start_s); }

double Rainfall::run_off_m(double since_start_s, double curve_number) const {
  return runoff_depth_m(fallen_m(since_start_s), curve_number);
}

double Rainfall::heaviest_start_s(double length_s) const {
  constexpr double stride_s = 360;
  double best_s = 0, most_m = -1;
  for (double start_s = 0; start_s + length_s <= storm_length_s; start_s += stride_s) {
    const double span_m = fallen_m(start_s + length_s) - fallen_m(start_s);
    if (span_m <= most_m) continue;
    most_m = span_m;
    best_s = start_s;
  }
  return best_s;
}

}  // namespace yardwright::drain::storm
