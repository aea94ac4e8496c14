#include "geom/drain/storm/flow_kernel.hpp"

#include <bit>
#include <cmath>
#include <cstdint>

// One source, compiled for machines with 512-bit vectors, with 256-bit ones and with neither; none of them fuses
// multiplications with additions, so that their bits agree. Sanitizers cannot stand the choice at load time; tests
// compile it for one machine at a time.
#ifndef FOR_EACH_MACHINE
#if defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
#define FOR_EACH_MACHINE __attribute__((target_clones("avx512f", "avx2", "default")))
#else
#define FOR_EACH_MACHINE
#endif
#endif

namespace yardwright::drain::storm {

namespace {

/// x^(-1/3) of a positive normal number to 2e-5 of it: a first guess from the bits, then two steps of Newton's. Products are
/// paired here and below so that few wait for another.
inline float inverse_cube_root(float x) {
  const float bits = static_cast<float>(std::bit_cast<std::int32_t>(x));
  float root = std::bit_cast<float>(0x54a2fa8c - static_cast<std::int32_t>(bits * (1.0F / 3.0F)));
  const float third = x * (1.0F / 3.0F);
  root = root * (4.0F / 3.0F - (third * root) * (root * root));
  return root * (4.0F / 3.0F - (third * root) * (root * root));
}

inline float least(float a, float b) { return a < b ? a : b; }
inline float most(float a, float b) { return a < b ? b : a; }
inline double most(double a, double b) { return a < b ? b : a; }

}  // namespace

FOR_EACH_MACHINE
void flow_over_faces(const FaceCells& cells, const FormerFlow& former, const FaceStep& step, int faces,
                     float* __restrict flow) {
  const float *low_z = cells.low_bed_m, *high_z = cells.high_bed_m;
  const double *low_h = cells.low_depth_m, *high_h = cells.high_depth_m;
  const float *low_gn2 = cells.low_friction, *high_gn2 = cells.high_friction;
  const float *q_before = former.before, *q_at = former.at, *q_after = former.after;
  const float own = step.own_share, beside = (1 - own) / 2, pull = step.gravity_step_per_cell;
  const float two_steps_s = 2 * step.step_s, least_h = step.least_depth_m;
  for (int i = 0; i < faces; ++i) {
    const double level_fall = static_cast<double>(low_z[i]) + low_h[i] - (static_cast<double>(high_z[i]) + high_h[i]);
    const float fall = static_cast<float>(level_fall), bed_fall = low_z[i] - high_z[i];
    const float low = static_cast<float>(low_h[i]), high = static_cast<float>(high_h[i]);
    const float open = most(low + least(bed_fall, 0), high - most(bed_fall, 0));
    const float q_mean = own * q_at[i] + beside * (q_before[i] + q_after[i]);
    const float driven = q_mean + pull * open * fall;
    const float h = most(least(open, driven > 0 ? low : high), 1e-12F);
    const float b = q_mean + pull * h * fall;
    // q (1 + k |q|) = b with k = g n^2 dt / h^(7/3): its root, written so that nothing cancels.
    const float r = inverse_cube_root(h), r2 = r * r;
    const float k_4 = two_steps_s * (low_gn2[i] + high_gn2[i]) * ((r2 * r2) * (r2 * r));  // 4 k, of the mean n^2
    const float q = 2 * b / (1 + std::sqrt(1 + k_4 * std::fabs(b)));
    flow[i] = h > least_h ? q : 0;
  }
}

FOR_EACH_MACHINE
void shares_that_leave(const CellFaces& faces, const double* depth_m, float step_per_cell, int cells,
                       float* __restrict share, float* __restrict fastest_per_s) {
  // What is left in an emptied cell, so that rounding never asks for more than it holds.
  constexpr float nearly_all = 1 - 1e-6F;
  constexpr float film_m = 1e-3F;  // below it a rate says nothing of the step
  const float *west = faces.west, *east = faces.east, *south = faces.south, *north = faces.north;
  for (int i = 0; i < cells; ++i) {
    const float out = most(east[i], 0) + most(-west[i], 0) + most(north[i], 0) + most(-south[i], 0);
    const float depth = static_cast<float>(depth_m[i]);
    const float wanted = out * step_per_cell;
    const float holds = depth * nearly_all;
    share[i] = wanted > holds ? holds / wanted : 1;
    fastest_per_s[i] = most(fastest_per_s[i], least(out, holds / step_per_cell) / most(depth, film_m));
  }
}

FOR_EACH_MACHINE
void shrink_flows(const float* flow, const float* low_share, const float* high_share, int faces,
                  float* __restrict shrunk) {
  for (int i = 0; i < faces; ++i) shrunk[i] = flow[i] * (flow[i] > 0 ? low_share[i] : high_share[i]);
}

FOR_EACH_MACHINE
void move_water(const CellFaces& faces, double step_per_cell, int cells, double* __restrict depth_m,
                float* __restrict deepest_m) {
  const float *west = faces.west, *east = faces.east, *south = faces.south, *north = faces.north;
  for (int i = 0; i < cells; ++i) {
    const double in = static_cast<double>(west[i]) + static_cast<double>(south[i]);
    const double out = static_cast<double>(east[i]) + static_cast<double>(north[i]);
    const double depth = most(depth_m[i] + step_per_cell * (in - out), 0.0);
    depth_m[i] = depth;
    deepest_m[i] = most(deepest_m[i], static_cast<float>(depth));
  }
}

}  // namespace yardwright::drain::storm
