#include "geom/drain/storm/surface_flow.hpp"

#include <tbb/parallel_for.h>
#include <tbb/parallel_for_each.h>

#include <algorithm>
#include <cassert>
#include <cmath>

#include "geom/drain/storm/flow_kernel.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr double gravity = 9.81;
constexpr int rows_in_band = 16;

}  // namespace

SurfaceFlow::SurfaceFlow(const LevelGrid& bed, const std::vector<float>& roughness_n, SurfaceFlowOptions options)
    : frame_{bed.frame()}, options_{options}, stride_{static_cast<std::size_t>(bed.frame().columns) + 3} {
  assert(roughness_n.size() == frame_.cells());
  const std::size_t all = stride_ * (static_cast<std::size_t>(frame_.rows) + 2) + 2;
  for (auto* values : {&bed_m_, &friction_, &east_m2_per_s_, &north_m2_per_s_, &east_wanted_, &north_wanted_})
    values->assign(all, 0.0F);
  share_.assign(all, 1.0F);  // beyond the edge it stays so
  depth_m_.assign(all, 0.0);
  make_bands();
  set_bed(bed, roughness_n);
  set_bed_beyond_edge();
}

void SurfaceFlow::make_bands() {
  for (int row = 1; row <= frame_.rows; row += rows_in_band) {
    const std::vector<float> none(stride_, 0.0F);
    bands_.push_back({row, std::min(row + rows_in_band, frame_.rows + 1), none, none, none});
  }
}

void SurfaceFlow::set_bed(const LevelGrid& bed, const std::vector<float>& roughness_n) {
  for (std::size_t i = 0; i < frame_.cells(); ++i) {
    const std::size_t at = padded(static_cast<Cell>(i));
    bed_m_[at] = bed.values()[i];
    friction_[at] = static_cast<float>(gravity) * roughness_n[i] * roughness_n[i];
  }
}

/// The ground goes on beyond the edge as it falls there, at least by the least fall; beside a wall it stands high.
void SurfaceFlow::set_bed_beyond_edge() {
  const auto least_fall = static_cast<float>(options_.least_edge_fall * frame_.cell_m);
  const auto extend = [&](std::size_t beyond, std::size_t edge, std::size_t inner) {
    const float fall = std::max(bed_m_[inner] - bed_m_[edge], least_fall);
    bed_m_[beyond] = options_.open_edge ? bed_m_[edge] - fall : bed_m_[edge] + 1e4F;
    friction_[beyond] = friction_[edge];
  };
  const auto columns = static_cast<std::size_t>(frame_.columns);
  for (int row = 1; row <= frame_.rows; ++row) {
    const std::size_t west = row_begin(row) + 1, east = row_begin(row) + columns;
    extend(west - 1, west, columns > 1 ? west + 1 : west);
    extend(east + 1, east, columns > 1 ? east - 1 : east);
  }
  for (std::size_t column = 1; column <= columns; ++column) {
    const std::size_t south = row_begin(1) + column, north = row_begin(frame_.rows) + column;
    extend(south - stride_, south, frame_.rows > 1 ? south + stride_ : south);
    extend(north + stride_, north, frame_.rows > 1 ? north - stride_ : north);
  }
}

/// Beyond an open edge water stands as deep as at it, and so leaves as over a long even slope.
void SurfaceFlow::set_water_beyond_edge() {
  if (!options_.open_edge) return;
  const auto columns = static_cast<std::size_t>(frame_.columns);
  for (int row = 1; row <= frame_.rows; ++row) {
    const std::size_t begin = row_begin(row);
    depth_m_[begin] = depth_m_[begin + 1];
    depth_m_[begin + columns + 1] = depth_m_[begin + columns];
  }
  std::copy_n(depth_m_.begin() + static_cast<std::ptrdiff_t>(row_begin(1)), stride_,
              depth_m_.begin() + static_cast<std::ptrdiff_t>(row_begin(0)));
  std::copy_n(depth_m_.begin() + static_cast<std::ptrdiff_t>(row_begin(frame_.rows)), stride_,
              depth_m_.begin() + static_cast<std::ptrdiff_t>(row_begin(frame_.rows + 1)));
}

std::vector<float> SurfaceFlow::depths_m() const {
  std::vector<float> depths(frame_.cells());
  for (std::size_t i = 0; i < depths.size(); ++i) depths[i] = static_cast<float>(depth_m(static_cast<Cell>(i)));
  return depths;
}

double SurfaceFlow::add(Cell cell, double depth_m) {
  double& depth = depth_m_[padded(cell)];
  const double change = std::max(depth_m, -depth);
  depth += change;
  const int row = cell / frame_.columns;
  float& deepest = bands_[static_cast<std::size_t>(row / rows_in_band)].deepest_m;
  deepest = std::max(deepest, static_cast<float>(depth));
  return change;
}

void SurfaceFlow::rain(const std::vector<std::uint8_t>& kind, std::span<const double> depth_m) {
  const auto columns = static_cast<std::size_t>(frame_.columns);
  tbb::parallel_for_each(bands_, [&](Band& band) {
    for (int row = band.first_row; row < band.end_row; ++row) {
      const std::uint8_t* of_cell = &kind[(static_cast<std::size_t>(row) - 1) * columns];
      double* depth = &depth_m_[row_begin(row) + 1];
      for (std::size_t i = 0; i < columns; ++i) depth[i] += depth_m[of_cell[i]];
    }
    // Enough for the next step: no cell has become deeper than the band's deepest and the heaviest rain.
    band.deepest_m += static_cast<float>(std::ranges::max(depth_m));
  });
}

double SurfaceFlow::stable_step_s(double longest_s) const {
  float deepest_m = 0, fastest_per_s = 0;
  for (const Band& band : bands_) {
    deepest_m = std::max(deepest_m, band.deepest_m);
    fastest_per_s = std::max(fastest_per_s, band.fastest_per_s);
  }
  // Celerity of a shallow wave, and of a kinematic one, 5/3 of the speed.
  const double wave_m_per_s = std::sqrt(gravity * static_cast<double>(deepest_m));
  const double flood_m_per_s = 5.0 / 3.0 * static_cast<double>(fastest_per_s) * frame_.cell_m;
  const double fastest = std::max(wave_m_per_s, flood_m_per_s);
  const double longest = std::min(longest_s, options_.longest_step_s);
  return fastest > 0 ? std::min(longest, options_.courant_ratio * frame_.cell_m / fastest) : longest;
}

/// The flow over an edge goes on beyond it.
void SurfaceFlow::set_flow_beyond_edge() {
  const auto columns = static_cast<std::size_t>(frame_.columns);
  for (int row = 1; row <= frame_.rows; ++row) {
    float* east = &east_m2_per_s_[row_begin(row)];
    east[-1] = east[0];
    east[columns + 1] = east[columns];
  }
}

/// Over the eastern faces of a row, from the one at the western edge, and over its northern faces.
void SurfaceFlow::find_flows(double step_s, int row) {
  const FaceStep step{static_cast<float>(step_s), static_cast<float>(gravity * step_s / frame_.cell_m),
                      static_cast<float>(options_.own_share_ratio), static_cast<float>(options_.least_depth_m)};
  const auto between = [&](std::size_t low, std::size_t high) {
    return FaceCells{&bed_m_[low], &bed_m_[high], &depth_m_[low], &depth_m_[high], &friction_[low], &friction_[high]};
  };
  const std::size_t at = row_begin(row), cell = at + 1;
  if (row > 0) {
    const float* former = &east_m2_per_s_[at];
    flow_over_faces(between(at, at + 1), {former - 1, former, former + 1}, step, frame_.columns + 1, &east_wanted_[at]);
  }
  const float* former = &north_m2_per_s_[cell];
  const float* before = row > 0 ? former - stride_ : former;
  const float* after = row < frame_.rows ? former + stride_ : former;
  flow_over_faces(between(cell, cell + stride_), {before, former, after}, step, frame_.columns, &north_wanted_[cell]);
}

/// Water only leaves over the edge.
void SurfaceFlow::keep_out_inflow() {
  const auto columns = static_cast<std::size_t>(frame_.columns);
  for (int row = 1; row <= frame_.rows; ++row) {
    float &west_edge = east_wanted_[row_begin(row)], &east_edge = east_wanted_[row_begin(row) + columns];
    west_edge = std::min(west_edge, 0.0F);
    east_edge = std::max(east_edge, 0.0F);
  }
  for (std::size_t column = 1; column <= columns; ++column) {
    float& south_edge = north_wanted_[row_begin(0) + column];
    float& north_edge = north_wanted_[row_begin(frame_.rows) + column];
    south_edge = std::min(south_edge, 0.0F);
    north_edge = std::max(north_edge, 0.0F);
  }
}

void SurfaceFlow::find_shares(double step_s, Band& band) {
  std::ranges::fill(band.fastest_of_column_per_s, 0.0F);
  for (int row = band.first_row; row < band.end_row; ++row) {
    const std::size_t cell = row_begin(row) + 1;
    const CellFaces faces{&east_wanted_[cell - 1], &east_wanted_[cell], &north_wanted_[cell - stride_],
                          &north_wanted_[cell]};
    shares_that_leave(faces, &depth_m_[cell], static_cast<float>(step_s / frame_.cell_m), frame_.columns, &share_[cell],
                      &band.fastest_of_column_per_s[1]);
  }
  band.fastest_per_s = std::ranges::max(band.fastest_of_column_per_s);
}

/// The faces between two bands are shrunk by both, each for its own use; the lower one keeps them.
void SurfaceFlow::move_water(double step_s, Band& band) {
  std::ranges::fill(band.deepest_of_column_m, 0.0F);
  const std::size_t first = row_begin(band.first_row) + 1;
  float* south = &band.south_m2_per_s[1];
  shrink_flows(&north_wanted_[first - stride_], &share_[first - stride_], &share_[first], frame_.columns, south);
  for (int row = band.first_row; row < band.end_row; ++row) {
    const std::size_t at = row_begin(row), cell = at + 1;
    float *east = &east_m2_per_s_[at], *north = &north_m2_per_s_[cell];
    shrink_flows(&north_wanted_[cell], &share_[cell], &share_[cell + stride_], frame_.columns, north);
    shrink_flows(&east_wanted_[at], &share_[at], &share_[cell], frame_.columns + 1, east);
    if (row == 1) std::copy_n(south, frame_.columns, north - stride_);
    storm::move_water({east, east + 1, south, north}, step_s / frame_.cell_m, frame_.columns, &depth_m_[cell],
                      &band.deepest_of_column_m[1]);
    south = north;
  }
  band.deepest_m = std::ranges::max(band.deepest_of_column_m);
}

/// Over the whole edge, summed in one order.
double SurfaceFlow::leaving_m2_per_s() const {
  const auto columns = static_cast<std::size_t>(frame_.columns);
  double sum = 0;
  for (int row = 1; row <= frame_.rows; ++row)
    sum += static_cast<double>(east_m2_per_s_[row_begin(row) + columns]) -
           static_cast<double>(east_m2_per_s_[row_begin(row)]);
  for (std::size_t column = 1; column <= columns; ++column)
    sum += static_cast<double>(north_m2_per_s_[row_begin(frame_.rows) + column]) -
           static_cast<double>(north_m2_per_s_[row_begin(0) + column]);
  return sum;
}

void SurfaceFlow::step(double step_s) {
  set_water_beyond_edge();
  set_flow_beyond_edge();
  tbb::parallel_for(tbb::blocked_range<int>(0, frame_.rows + 1, rows_in_band), [&](const auto& rows) {
    for (int row = rows.begin(); row < rows.end(); ++row) find_flows(step_s, row);
  });
  keep_out_inflow();
  tbb::parallel_for_each(bands_, [&](Band& band) { find_shares(step_s, band); });
  tbb::parallel_for_each(bands_, [&](Band& band) { move_water(step_s, band); });
  left_m3_ += leaving_m2_per_s() * step_s * frame_.cell_m;
}

double SurfaceFlow::stored_m3() const {
  double sum_m = 0;
  for (std::size_t i = 0; i < frame_.cells(); ++i) sum_m += depth_m(static_cast<Cell>(i));
  return sum_m * frame_.cell_area_m2();
}

}  // namespace yardwright::drain::storm
