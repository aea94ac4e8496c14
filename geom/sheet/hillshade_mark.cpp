#include "geom/sheet/hillshade_mark.hpp"

#include <algorithm>
#include <cmath>

#include "geom/ground/hillshade.hpp"
#include "geom/sheet/palette.hpp"

namespace yardwright {

namespace {

constexpr double darkest_alpha = 80;  ///< quiet: the lines of the plan stay on top
constexpr double lightest_alpha = 150;

std::uint32_t pixel_of(Colour colour, double alpha) {
  const auto opacity = static_cast<std::uint32_t>(std::clamp(alpha, 0.0, 255.0));
  return opacity << 24 | std::uint32_t{colour.blue} << 16 | std::uint32_t{colour.green} << 8 | colour.red;
}

std::uint32_t pixel_of_shade(double shade, double level_shade) {
  if (shade < level_shade) return pixel_of(palette::earth, darkest_alpha * (level_shade - shade) / level_shade);
  return pixel_of(palette::white, lightest_alpha * (shade - level_shade) / (1 - level_shade));
}

}  // namespace

std::optional<PictureMark> hillshade_mark(const LevelGrid& ground) {
  if (ground.empty()) return std::nullopt;
  const Sun sun;
  const Grid<float> shades = hillshade(ground, sun);
  const GridFrame& frame = shades.frame();
  PictureMark picture;
  picture.corner = {frame.south_west.x, frame.south_west.y + frame.rows * frame.cell_m};
  picture.right = {frame.columns * frame.cell_m, 0};
  picture.down = {0, -frame.rows * frame.cell_m};
  std::vector<std::uint32_t> pixels;
  pixels.reserve(frame.cells());
  for (int row = frame.rows - 1; row >= 0; --row) {
    for (int column = 0; column < frame.columns; ++column) {
      pixels.push_back(pixel_of_shade(static_cast<double>(shades.at({column, row})), sin(sun.height)));
    }
  }
  picture.pixels = {frame.columns, frame.rows, std::move(pixels)};
  return picture;
}

}  // namespace yardwright
