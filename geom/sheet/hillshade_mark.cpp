#include "geom/sheet/hillshade_mark.hpp"

#include <algorithm>
#include <cmath>

#include "geom/ground/hillshade.hpp"
#include "geom/sheet/grid_picture.hpp"
#include "geom/sheet/palette.hpp"

namespace yardwright {

namespace {

constexpr double darkest_alpha = 80;  ///< quiet: the lines of the plan stay on top
constexpr double lightest_alpha = 150;

Colour with_alpha(Colour colour, double alpha) {
  colour.alpha = static_cast<std::uint8_t>(std::clamp(alpha, 0.0, 255.0));
  return colour;
}

Colour colour_of_shade(double shade, double level_shade) {
  if (shade < level_shade) return with_alpha(palette::earth, darkest_alpha * (level_shade - shade) / level_shade);
  return with_alpha(palette::white, lightest_alpha * (shade - level_shade) / (1 - level_shade));
}

}  // namespace

std::optional<PictureMark> hillshade_mark(const LevelGrid& ground) {
  if (ground.empty()) return std::nullopt;
  const Sun sun;
  const Grid<float> shades = hillshade(ground, sun);
  return grid_picture(shades.frame(), [&](std::size_t cell) {
    return colour_of_shade(static_cast<double>(shades.values()[cell]), sin(sun.height));
  });
}

}  // namespace yardwright
