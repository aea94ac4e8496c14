// Trade-offs: what is worth keeping where several aims pull apart. A point is what is wanted little of, aim by aim: smaller is
// better in each. The hypervolume of points is the volume of all that at least one of them is no worse than, up to a
// reference: E. Zitzler, L. Thiele, Multiobjective optimization using evolutionary algorithms, PPSN 1998 (from memory).
#pragma once

#include <vector>

namespace yardwright::grow {

using Aims = std::vector<double>;

/// No worse in every aim, and better in one.
bool dominates(const Aims& a, const Aims& b);

/// Those that no other dominates, in their order; of equal ones the first.
std::vector<std::size_t> non_dominated(const std::vector<Aims>& points);

/// Exact, by slices along the last aim: quick for some hundred points of two aims, or a few dozen of five. What is not better
/// than the reference in every aim adds nothing.
double hypervolume(std::vector<Aims> points, const Aims& reference);

}  // namespace yardwright::grow
