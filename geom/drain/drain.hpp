// Drain: where does the rain of the site's storm go, and does it end in a pit or against a bin? Runs water over the
// design surface (metres, levels of the ground) and judges every pit and bin. Answers for the site as given: hand in
// as_of(site, phase) for a phase. Page: docs/methods/drain.md.
#pragma once

#include "geom/drain/flow.hpp"
#include "geom/drain/pit_water.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/mend_search.hpp"

namespace yardwright::drain {

/// A hollow that holds water after rain.
struct Pond {
  Depression hollow;
  std::vector<SitePath> rings;  ///< closed, filled by the even-odd rule
  SitePath way_out;             ///< from its lowest place over the spill to the edge
};

struct Answer {
  Findings findings;
  Flow flow;  ///< empty where the ground is not known
  std::vector<Pond> ponds;
  std::vector<PitWater> pits;
  bool mends_sought = true;  ///< of every finding; otherwise ask again
};

struct Asking {
  MendSearch search;
  const Answer* before = nullptr;  ///< of any yard: where it is much like this one, only what differs is found anew
};

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Asking& asking = {});

}  // namespace yardwright::drain
