// The flow of a storm over time from one catchment: NRCS curve number excess in steps of a minute, sent through the NRCS
// dimensionless unit hydrograph. SI; time from the storm's start.
// Source: NRCS National Engineering Handbook 630, chapter 16, curvilinear unit hydrograph with the peak factor 484 (read
// second-hand in several public listings that agree). Page: docs/methods/drain.md.
#pragma once

#include <vector>

#include "geom/site/storm.hpp"

namespace yardwright::drain {

struct Hydrograph {
  double step_s = 60;
  std::vector<double> flow_m3_per_s;  ///< at the end of each step
  double volume_m3() const;
};

struct HydrographPeak {
  double flow_m3_per_s = 0;
  double at_s = 0;  ///< since the storm's start
  bool operator==(const HydrographPeak&) const = default;
};

/// Flow of the unit hydrograph as a part of its peak, `time_ratio` being the time by that of the peak; 0 from 5 on.
double unit_flow_ratio(double time_ratio);

/// The runoff of each step: the curve number applied to all rain fallen so far, differenced.
std::vector<double> excess_by_step_m(double rain_m, double curve_number, const MassCurve& curve, double step_s);

/// A known curve, a curve number in (0, 100]; the time of concentration is taken as 0.1 h at least. The volume is the
/// runoff's.
Hydrograph storm_hydrograph(double area_m2, double curve_number, double rain_m, double concentration_s,
                            const MassCurve& curve);

/// The first greatest; 0 at 0 of no flow.
HydrographPeak peak_of(const Hydrograph& hydrograph);

}  // namespace yardwright::drain
