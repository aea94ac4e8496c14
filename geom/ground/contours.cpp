#include "geom/ground/contours.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <utility>

namespace yardwright {

namespace {

/// An edge between two neighbouring cell centres, numbered: twice the offset of its south or west end, plus one
/// where it runs north.
using EdgeNumber = std::size_t;
constexpr EdgeNumber no_edge = static_cast<EdgeNumber>(-1);

/// The four centres around a corner of cells: south-west, south-east, north-east, north-west. Edge i runs from
/// corner i to corner i + 1.
struct Square {
  std::array<std::size_t, 4> corners;
  std::array<EdgeNumber, 4> edges;
};

Square square_at(const GridFrame& frame, CellIndex south_west) {
  const std::size_t sw = frame.offset(south_west), wide = static_cast<std::size_t>(frame.columns);
  return {{sw, sw + 1, sw + wide + 1, sw + wide}, {2 * sw, 2 * (sw + 1) + 1, 2 * (sw + wide), 2 * sw + 1}};
}

/// A piece of a contour through one square, from edge to edge, higher ground on its left.
struct Piece {
  EdgeNumber from, to;
};

class Tracer {
 public:
  Tracer(const LevelGrid& ground, double interval_m);
  std::vector<Contour> trace();

 private:
  void cut_squares();
  void cut_square(const Square& square);
  void cut_square_at(const Square& square, int band);
  bool middle_is_above(const Square& square, int band) const;
  SitePoint crossing(EdgeNumber edge, double level_m) const;
  void join(const std::vector<Piece>& pieces, int band, std::vector<Contour>& out);
  Contour follow(EdgeNumber start, int band);

  const LevelGrid& ground_;
  const GridFrame& frame_;
  const std::vector<float>& levels_;
  double interval_m_;
  std::vector<int> bands_;  ///< of each centre: the number of the highest contour not above it
  int lowest_ = 0;
  std::vector<std::vector<Piece>> pieces_;  ///< by band, from lowest_ + 1
  std::vector<EdgeNumber> next_;            ///< of the band being joined
};

Tracer::Tracer(const LevelGrid& ground, double interval_m)
    : ground_{ground}, frame_{ground.frame()}, levels_{ground.values()}, interval_m_{interval_m} {
  bands_.reserve(levels_.size());
  for (const float level_m : levels_) bands_.push_back(static_cast<int>(std::floor(double(level_m) / interval_m)));
  const auto [low, high] = std::ranges::minmax(bands_);
  lowest_ = low;
  pieces_.resize(static_cast<std::size_t>(high - low));
  next_.assign(2 * levels_.size(), no_edge);
}

void Tracer::cut_squares() {
  for (int row = 0; row + 1 < frame_.rows; ++row) {
    const int* south = &bands_[frame_.offset({0, row})];
    const int* north = south + frame_.columns;
    for (int column = 0; column + 1 < frame_.columns; ++column, ++south, ++north) {
      const bool level = south[0] == south[1] && south[0] == north[0] && south[0] == north[1];
      if (!level) cut_square(square_at(frame_, {column, row}));  // most squares hold no line
    }
  }
}

void Tracer::cut_square(const Square& square) {
  const auto& c = square.corners;
  const auto [low, high] = std::minmax({bands_[c[0]], bands_[c[1]], bands_[c[2]], bands_[c[3]]});
  for (int band = low + 1; band <= high; ++band) cut_square_at(square, band);
}

void Tracer::cut_square_at(const Square& square, int band) {
  const auto above = [&](std::size_t i) { return bands_[square.corners[i % 4]] >= band; };
  const auto leaves = [&](std::size_t i) { return above(i) && !above(i + 1); };
  const auto enters = [&](std::size_t i) { return !above(i) && above(i + 1); };
  const bool saddle = above(0) == above(2) && above(1) == above(3) && above(0) != above(1);
  // At a saddle a piece cuts off one corner: the low one ahead where the high ground is joined, else the high one.
  const std::size_t step = saddle && middle_is_above(square, band) ? 1 : 3;
  auto& pieces = pieces_[static_cast<std::size_t>(band - lowest_ - 1)];
  for (std::size_t i = 0; i < 4; ++i) {
    if (!leaves(i)) continue;
    std::size_t to = (i + step) % 4;
    while (!enters(to)) to = (to + 1) % 4;
    pieces.push_back({square.edges[i], square.edges[to]});
  }
}

bool Tracer::middle_is_above(const Square& square, int band) const {
  const auto z = [&](std::size_t i) { return double(levels_[square.corners[i]]); };
  // The level where the bilinear surface is itself a saddle; at a saddle of bands the divisor is never 0.
  const double middle_m = (z(0) * z(2) - z(1) * z(3)) / (z(0) + z(2) - z(1) - z(3));
  return middle_m >= band * interval_m_;
}

SitePoint Tracer::crossing(EdgeNumber edge, double level_m) const {
  const std::size_t from = edge / 2, to = from + (edge % 2 == 1 ? static_cast<std::size_t>(frame_.columns) : 1);
  const double low_m = levels_[from], high_m = levels_[to];
  const double part = std::clamp((level_m - low_m) / (high_m - low_m), 0.0, 1.0);
  return between(frame_.centre(frame_.cell_at_offset(from)), frame_.centre(frame_.cell_at_offset(to)), part);
}

/// Uses up the pieces from `start` on.
Contour Tracer::follow(EdgeNumber start, int band) {
  Contour line{band * interval_m_, band % 5 == 0, false, {}};
  EdgeNumber edge = start;
  while (edge != no_edge) {
    const SitePoint point = crossing(edge, line.level_m);
    if (line.points.empty() || line.points.back() != point) line.points.push_back(point);
    edge = std::exchange(next_[edge], no_edge);
    if (edge == start) {
      line.closed = true;
      break;
    }
  }
  if (line.closed && line.points.size() > 1 && line.points.front() == line.points.back()) line.points.pop_back();
  return line;
}

void Tracer::join(const std::vector<Piece>& pieces, int band, std::vector<Contour>& out) {
  for (const Piece& piece : pieces) next_[piece.from] = piece.to;
  const auto keep = [&](Contour line) {
    if (line.points.size() > 1) out.push_back(std::move(line));  // a summit at exactly the level is but a point
  };
  // Open lines first, from the grid's rim, so that what then remains are rings.
  std::vector<EdgeNumber> ends;
  for (const Piece& piece : pieces) ends.push_back(piece.to);
  std::ranges::sort(ends);
  for (const Piece& piece : pieces) {
    if (!std::ranges::binary_search(ends, piece.from)) keep(follow(piece.from, band));
  }
  for (const Piece& piece : pieces) {
    if (next_[piece.from] != no_edge) keep(follow(piece.from, band));
  }
}

std::vector<Contour> Tracer::trace() {
  cut_squares();
  std::vector<Contour> out;
  for (std::size_t i = 0; i < pieces_.size(); ++i) join(pieces_[i], lowest_ + 1 + static_cast<int>(i), out);
  return out;
}

}  // namespace

std::vector<Contour> contours(const LevelGrid& ground, double interval_m) {
  assert(interval_m > 0);
  if (ground.empty()) return {};
  return Tracer{ground, interval_m}.trace();
}

double sensible_interval_m(double relief_m, UnitSystem system) {
  constexpr double most_levels = 20;
  return least_interval_m(relief_m / most_levels, system);
}

double least_interval_m(double no_less_m, UnitSystem system) {
  const double unit_m = shown_unit(Quantity::length, system).factor;
  const double least = no_less_m / unit_m;
  for (double decade = 0.1;; decade *= 10) {
    for (const double step : {1.0, 2.0, 5.0}) {
      if (decade * step >= least) return decade * step * unit_m;
    }
  }
}

double relief_m(const LevelGrid& ground) {
  if (ground.empty()) return 0;
  const auto [low_m, high_m] = std::ranges::minmax(ground.values());
  return double(high_m) - double(low_m);
}

}  // namespace yardwright
