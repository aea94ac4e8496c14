// The arithmetic of surface flow, a row of cells at a time, in plain loops that a compiler can turn into vector
// instructions. Depths are double, so that adding a film of rain to a deep pond loses nothing; flows are float.
// The same bits with and without vector instructions. Symbols: q flow over a face in m2/s, z bed, h depth, n Manning's.
#pragma once

namespace yardwright::drain::storm {

/// The cells on the two sides of a row of faces: `low` is the western or southern one, from which a positive q comes.
struct FaceCells {
  const float* low_bed_m;
  const float* high_bed_m;
  const double* low_depth_m;
  const double* high_depth_m;
  const float* low_friction;  ///< g n^2 of the cell
  const float* high_friction;
};

/// The flows a step ago: at the faces, and at the next ones upstream and downstream of each.
struct FormerFlow {
  const float* before;
  const float* at;
  const float* after;
};

struct FaceStep {
  float step_s;
  float gravity_step_per_cell;  ///< g dt / dx
  float own_share;              ///< of a face's own former flow, against that of the faces before and after
  float least_depth_m;          ///< no water moves that is shallower
};

/// New flows over a row of faces, by local inertia with Manning friction taken at the end of the step.
void flow_over_faces(const FaceCells& cells, const FormerFlow& former, const FaceStep& step, int faces, float* flow);

/// Flows over the four faces of a row of cells.
struct CellFaces {
  const float* west;
  const float* east;
  const float* south;
  const float* north;
};

/// By how much the flows out of each cell must shrink so that no cell gives more water than it holds, and the greatest
/// rate at which any cell empties (`fastest_per_s` is raised to it, cell by cell).
void shares_that_leave(const CellFaces& faces, const double* depth_m, float step_per_cell, int cells, float* share,
                       float* fastest_per_s);

/// Shrinks the flow over each face by the share of the cell that it comes out of.
void shrink_flows(const float* flow, const float* low_share, const float* high_share, int faces, float* shrunk);

/// Moves the water of a step and raises `deepest_m` to the new depths, cell by cell.
void move_water(const CellFaces& faces, double step_per_cell, int cells, double* depth_m, float* deepest_m);

}  // namespace yardwright::drain::storm
