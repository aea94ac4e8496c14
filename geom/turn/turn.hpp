// Turn: do the trucks get in, dump and get out? Every route is driven by its vehicle and judged: radius and hitch
// angles, room beside everything that stands, doors and what hangs over the way, the raised bed, the grade.
// Site frame, metres. Method and sources: docs/methods/turn.md.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/mend_search.hpp"
#include "geom/turn/clearance.hpp"

namespace yardwright::turn {

/// How near the vehicle comes to one thing on its way, by the rule that judges it.
struct ItemClearance {
  ItemId item;  ///< nothing for the lot's edges
  std::string rule;
  Clearance clearance;
};

struct DrivenRoute {
  ItemId route;
  Route drawn;  ///< what was driven
  Course course;
  Driven driven;
  Region swept;
  std::vector<ItemClearance> clearances;
};

struct Answer {
  Findings findings;
  std::vector<DrivenRoute> routes;
  bool mends_sought = true;  ///< of every finding; otherwise ask again
};

struct Asking {
  MendSearch search;
  const Answer* before = nullptr;  ///< of the same catalogs: routes drawn as they were are not driven again
};

/// `catalogs` hold the rules that are in force on this site.
Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Asking& asking = {});

}  // namespace yardwright::turn
