// What would let the harvest into the dry stores: a bin that is not built yet, made wider or taller in the steps in which
// bins are made.
#pragma once

#include "geom/pace/pace.hpp"

namespace yardwright::pace {

/// The least widening and the least raising of one bin of a later phase that stores `lacking` more; none where no such
/// bin can be made large enough.
std::vector<Mend> capacity_mends(const Site& site, const Catalogs& catalogs, GrainVolume lacking, double pack_ratio);

}  // namespace yardwright::pace
