// A raster of square cells over the site: values at cell centres, row 0 southmost, column 0 westmost. The
// values are shared and immutable, so copying a Grid costs a few words; a new Grid is made to change one.
#pragma once

#include <cassert>
#include <memory>
#include <vector>

#include "geom/shape/point.hpp"

namespace yardwright {

struct CellIndex {
  int column = 0;
  int row = 0;
  bool operator==(const CellIndex&) const = default;
};

/// Where a grid lies: the site point of the south-west corner of cell (0, 0), and its extent.
struct GridFrame {
  SitePoint south_west;
  double cell_m = 1;
  int columns = 0;
  int rows = 0;
  bool operator==(const GridFrame&) const = default;

  std::size_t cells() const { return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows); }
  bool contains(CellIndex cell) const {
    return cell.column >= 0 && cell.row >= 0 && cell.column < columns && cell.row < rows;
  }
  std::size_t offset(CellIndex cell) const {
    assert(contains(cell));
    return static_cast<std::size_t>(cell.row) * static_cast<std::size_t>(columns) +
           static_cast<std::size_t>(cell.column);
  }
  CellIndex cell_at_offset(std::size_t offset) const {
    const auto wide = static_cast<std::size_t>(columns);
    return {static_cast<int>(offset % wide), static_cast<int>(offset / wide)};
  }
  SitePoint centre(CellIndex cell) const {
    return {south_west.x + (cell.column + 0.5) * cell_m, south_west.y + (cell.row + 0.5) * cell_m};
  }
  /// The cell that holds a point; may lie outside, ask contains().
  CellIndex cell_of(SitePoint point) const {
    return {static_cast<int>(std::floor((point.x - south_west.x) / cell_m)),
            static_cast<int>(std::floor((point.y - south_west.y) / cell_m))};
  }
  double cell_area_m2() const { return cell_m * cell_m; }
};

template <class Value>
class Grid {
 public:
  Grid() = default;
  Grid(GridFrame frame, std::vector<Value> values)
      : frame_{frame}, values_{std::make_shared<const std::vector<Value>>(std::move(values))} {
    assert(values_->size() == frame_.cells());
  }

  const GridFrame& frame() const { return frame_; }
  bool empty() const { return values_ == nullptr || values_->empty(); }
  Value at(CellIndex cell) const { return (*values_)[frame_.offset(cell)]; }
  const std::vector<Value>& values() const {
    static const std::vector<Value> none;
    return values_ ? *values_ : none;
  }
  /// Shares its data with `other`: a cheap test, true for copies.
  bool same_data(const Grid& other) const { return frame_ == other.frame_ && values_ == other.values_; }
  bool operator==(const Grid& other) const {
    return frame_ == other.frame_ && (values_ == other.values_ || values() == other.values());
  }

 private:
  GridFrame frame_;
  std::shared_ptr<const std::vector<Value>> values_;
};

/// Ground levels in metres. float keeps 0.03 mm at a level of 400 m; arithmetic on it is double.
using LevelGrid = Grid<float>;

/// Bilinear between cell centres, the nearest centres outside them; the grid must not be empty.
double level_at(const LevelGrid& grid, SitePoint point);

}  // namespace yardwright
