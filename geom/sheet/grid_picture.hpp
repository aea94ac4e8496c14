// A value of every cell of a grid as a picture that lies over the ground, in site metres.
#pragma once

#include "geom/shape/grid.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright {

/// As a picture's pixels hold it.
constexpr std::uint32_t pixel_of(Colour colour) {
  return std::uint32_t{colour.alpha} << 24 | std::uint32_t{colour.blue} << 16 | std::uint32_t{colour.green} << 8 |
         colour.red;
}

/// `colour_at(offset of a cell)`; the picture's first row is the northern one.
template <class ColourAt>
PictureMark grid_picture(const GridFrame& frame, ColourAt colour_at) {
  PictureMark picture;
  picture.corner = {frame.south_west.x, frame.south_west.y + frame.rows * frame.cell_m};
  picture.right = {frame.columns * frame.cell_m, 0};
  picture.down = {0, -frame.rows * frame.cell_m};
  std::vector<std::uint32_t> pixels;
  pixels.reserve(frame.cells());
  for (int row = frame.rows - 1; row >= 0; --row) {
    for (int column = 0; column < frame.columns; ++column)
      pixels.push_back(pixel_of(colour_at(frame.offset({column, row}))));
  }
  picture.pixels = {frame.columns, frame.rows, std::move(pixels)};
  return picture;
}

}  // namespace yardwright
