// Pace: does the yard keep up with the harvest? Today: what every bin holds, dry and wet capacity by grain, and
// how much stays behind on the floors. The harvest day itself (wet holding, bottleneck, days) says what it needs.
// Method, sources and limits: docs/methods/pace.md.
#pragma once

#include <string>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/pace/bin_volume.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::pace {

/// A bin or overhead bin whose grain is known; heaped full, pack factor not applied.
struct BinReport {
  ItemId bin;
  std::string grain;
  bool wet_holding = false;
  BinVolume volume;
};

/// With the pack factor.
struct GrainCapacity {
  std::string grain;
  GrainVolume dry;    ///< in dry stores and load-out bins
  GrainVolume wet;    ///< in wet holding
  GrainVolume stays;  ///< of both, once the centre sumps give no more
};

struct Answer {
  Findings findings;
  std::vector<BinReport> bins;          ///< in the site's order
  std::vector<GrainCapacity> capacity;  ///< in the order in which the site names the grains
  double pack_ratio = 1;
};

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

}  // namespace yardwright::pace
