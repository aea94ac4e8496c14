// Small terrains for the tests of drain: written as rows of numbers, north at the top, or made rough from a seed.
#pragma once

#include <functional>
#include <initializer_list>
#include <string>
#include <vector>

#include "geom/shape/grid.hpp"

namespace yardwright::drain {

/// The numbers of rows written north first, in the order of a grid's cells (south first).
std::vector<int> numbers(std::initializer_list<std::string> rows);
LevelGrid terrain(std::initializer_list<std::string> rows, double cell_m = 1);

/// Square, from the origin, its levels by a function of the place.
LevelGrid ground_of(int columns, int rows, double cell_m, const std::function<double(SitePoint)>& level_m);

/// A published library's test terrain: a bowl with a rim at 9 and two pits.
LevelGrid two_pit_bowl();

/// Hills of several sizes with noise rounded to a centimetre, so that there are pits, flats and ties.
LevelGrid rough_ground(int columns, int rows, unsigned seed);

/// The textbook fill: a heap of levels from the edge inwards, written apart from the core's.
std::vector<float> textbook_filled_m(const LevelGrid& levels);

}  // namespace yardwright::drain
