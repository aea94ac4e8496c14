// A test's oracle, apart from the core: the full shallow-water equations along one line, with the advection of momentum.
// First-order finite volumes with the fluxes of Harten, Lax and van Leer and the hydrostatic reconstruction of Audusse
// and others 2004 (equations from memory); no friction; closed ends. Metres, seconds.
#pragma once

#include <vector>

namespace yardwright::drain::storm {

class FiniteVolume {
 public:
  FiniteVolume(std::vector<double> bed_m, std::vector<double> depth_m, double cell_m);

  void run_until(double until_s);
  const std::vector<double>& depth_m() const { return depth_m_; }
  const std::vector<double>& flow_m2_per_s() const { return flow_m2_per_s_; }
  double stored_m2() const;

 private:
  struct Flux {
    double water, push_low, push_high;  ///< m2/s; m3/s2 as the cells on both sides feel it
  };
  double speed_m_per_s(std::size_t cell) const;
  double stable_step_s() const;
  Flux flux_between(std::size_t low, std::size_t high) const;
  Flux wall_flux(std::size_t cell) const;
  void step(double step_s);

  std::vector<double> bed_m_, depth_m_, flow_m2_per_s_;
  double cell_m_, now_s_ = 0;
};

}  // namespace yardwright::drain::storm
