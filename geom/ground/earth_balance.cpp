#include "geom/ground/earth_balance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geom/ground/grading.hpp"

namespace yardwright {

namespace {

constexpr double to_m = 0.001;  // a pad is not staked finer

/// Of one pad on the ground as it lies, with the walls that hold it.
class PadAlone {
 public:
  PadAlone(const Site& site, Pad pad) : site_{site}, pad_{std::move(pad)} {
    const LevelGrid& ground = site.ground.levels;
    for (std::size_t i = 0; i < ground.frame().cells(); ++i) {
      const SitePoint at = ground.frame().centre(ground.frame().cell_at_offset(i));
      if (!contains(Polygon{pad_.outline, {}}, at)) continue;
      low_m_ = std::min(low_m_, double(ground.values()[i]));
      high_m_ = std::max(high_m_, double(ground.values()[i]));
    }
  }

  bool touches_ground() const { return low_m_ <= high_m_; }
  double low_m() const { return low_m_; }
  double high_m() const { return high_m_; }

  PadLevel at(double level_m) const {
    Pad pad = pad_;
    pad.level_m = level_m;
    Grading grading{site_.ground.levels};
    for_each<RetainingWall>(site_, [&](const Item&, const RetainingWall& wall) { grading.grade(wall); });
    grading.grade(pad);
    const Earthwork earth = earthwork(site_.ground.levels, std::move(grading).levels());
    return {level_m, earth_balance(earth, site_.ground.shrink_ratio, site_.ground.swell_ratio)};
  }

 private:
  const Site& site_;
  Pad pad_;
  double low_m_ = std::numeric_limits<double>::infinity(), high_m_ = -low_m_;
};

std::optional<PadAlone> pad_alone(const Site& site, const Pad& pad) {
  if (site.ground.levels.empty() || pad.outline.size() < 3) return std::nullopt;
  PadAlone alone{site, pad};
  return alone.touches_ground() ? std::optional{std::move(alone)} : std::nullopt;
}

}  // namespace

EarthBalance earth_balance(const Earthwork& earth, double shrink_ratio, double swell_ratio) {
  return {earth, earth.cut_m3 * (1 - shrink_ratio), earth.cut_m3 * (1 + swell_ratio)};
}

EarthBalance earth_balance(const Site& site, const DesignSurface& surface) {
  return earth_balance(earthwork(surface), site.ground.shrink_ratio, site.ground.swell_ratio);
}

// Cut falls and fill rises with the level, each ever less or more steeply: their sum has one lowest place.
std::optional<PadLevel> least_earth_level(const Site& site, const Pad& pad) {
  const auto alone = pad_alone(site, pad);
  if (!alone) return std::nullopt;
  const auto moved_m3 = [&](double level_m) {
    const Earthwork earth = alone->at(level_m).balance.earth;
    return earth.cut_m3 + earth.fill_m3;
  };
  double low_m = alone->low_m(), high_m = alone->high_m();
  while (high_m - low_m > to_m) {
    const double third_m = (high_m - low_m) / 3;
    if (moved_m3(low_m + third_m) <= moved_m3(high_m - third_m))
      high_m -= third_m;
    else
      low_m += third_m;
  }
  return alone->at((low_m + high_m) / 2);
}

std::optional<PadLevel> balanced_level(const Site& site, const Pad& pad) {
  const auto alone = pad_alone(site, pad);
  if (!alone) return std::nullopt;
  double low_m = alone->low_m(), high_m = alone->high_m();
  while (high_m - low_m > to_m) {
    const double middle_m = (low_m + high_m) / 2;
    (alone->at(middle_m).balance.left_over_m3() > 0 ? low_m : high_m) = middle_m;
  }
  return alone->at((low_m + high_m) / 2);
}

}  // namespace yardwright
