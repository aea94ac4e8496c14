// Water that moves over a bed of square cells: depth-averaged flow by local inertia, with Manning friction, over dry and
// wet ground, off the open outer edge, around whatever stands in its way as high bed. Metres, seconds; cells by their
// offset in the grid. No water is made or lost: what was added is what stands and what left, to rounding.
// Method: Bates, Horritt, Fewtrell 2010, with the former flow centred (de Almeida and others 2012), friction solved at
// the end of the step, depth at a face no greater than upstream, and no cell giving more than it holds. The advection of
// momentum is left out: not for bores and jumps. The same bits at any number of threads. docs/methods/storm.md
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geom/drain/flow.hpp"

namespace yardwright::drain::storm {

struct SurfaceFlowOptions {
  double courant_ratio = 0.7;      ///< share of the longest step that theory allows
  double own_share_ratio = 0.8;    ///< of a face's own former flow; smaller is smoother
  double least_depth_m = 1e-5;     ///< shallower water does not move
  double longest_step_s = 5;       ///< over nearly dry ground
  double least_edge_fall = 0.001;  ///< slope by which water leaves over an edge that does not fall outward
  bool open_edge = true;           ///< otherwise a wall around the grid
};

class SurfaceFlow {
 public:
  /// Dry. `roughness_n` is Manning's, a cell each in the grid's order.
  SurfaceFlow(const LevelGrid& bed, const std::vector<float>& roughness_n, SurfaceFlowOptions options = {});

  const GridFrame& frame() const { return frame_; }
  double bed_m(Cell cell) const { return bed_m_[padded(cell)]; }
  double depth_m(Cell cell) const { return depth_m_[padded(cell)]; }
  double level_m(Cell cell) const { return bed_m(cell) + depth_m(cell); }
  /// Flow over the eastern and northern face of a cell, m2/s, eastward and northward.
  double flow_east_m2_per_s(Cell cell) const { return east_m2_per_s_[padded(cell)]; }
  double flow_north_m2_per_s(Cell cell) const { return north_m2_per_s_[padded(cell)]; }
  std::vector<float> depths_m() const;

  /// Raises or lowers the water of a cell; never below its bed. Gives back the change of depth made.
  double add(Cell cell, double depth_m);
  /// Rain on every cell, by the kind of each cell (in the grid's order) the depth of its kind.
  void rain(const std::vector<std::uint8_t>& kind, std::span<const double> depth_m);

  /// The step that is stable now, no longer than `longest_s`.
  double stable_step_s(double longest_s) const;
  void step(double step_s);

  double stored_m3() const;
  double left_m3() const { return left_m3_; }  ///< over the open edge, since the beginning

 private:
  /// Rows that one thread takes at a time, and what it found of them in the last step.
  struct Band {
    int first_row, end_row;
    std::vector<float> deepest_of_column_m, fastest_of_column_per_s;
    std::vector<float> south_m2_per_s;  ///< over the southern faces of its first row
    float deepest_m = 0, fastest_per_s = 0;
  };

  std::size_t padded(Cell cell) const {
    const auto offset = static_cast<std::size_t>(cell), wide = static_cast<std::size_t>(frame_.columns);
    return row_begin(static_cast<int>(offset / wide) + 1) + offset % wide + 1;
  }
  std::size_t row_begin(int row) const { return static_cast<std::size_t>(row) * stride_ + 1; }
  void make_bands();
  void set_bed(const LevelGrid& bed, const std::vector<float>& roughness_n);
  void set_bed_beyond_edge();
  void set_water_beyond_edge();
  void set_flow_beyond_edge();
  void find_flows(double step_s, int row);
  void keep_out_inflow();
  void find_shares(double step_s, Band& band);
  void move_water(double step_s, Band& band);
  double leaving_m2_per_s() const;

  GridFrame frame_;
  SurfaceFlowOptions options_;
  /// The columns, one cell beyond each edge, and the face beyond the western one; rows 0 and rows + 1 lie beyond too.
  std::size_t stride_ = 0;
  std::vector<float> bed_m_, friction_;
  std::vector<double> depth_m_;
  std::vector<float> east_m2_per_s_, north_m2_per_s_;  ///< over each cell's eastern and northern face
  std::vector<float> east_wanted_, north_wanted_;      ///< of the step in hand, before cells run dry
  std::vector<float> share_;                           ///< of the water wanted of a cell that it can give
  std::vector<Band> bands_;
  double left_m3_ = 0;
};

}  // namespace yardwright::drain::storm
