// Turn: do the trucks get in, dump and get out? Every route is driven by its vehicle and judged: radius and hitch
// angles, room beside everything that stands, doors and what hangs over the way, the raised bed, the grade.
// Site frame, metres. Method and sources: docs/methods/turn.md.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
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
  Course course;
  Driven driven;
  Region swept;
  std::vector<ItemClearance> clearances;
};

struct Answer {
  Findings findings;
  std::vector<DrivenRoute> routes;
};

/// `catalogs` hold the rules that are in force on this site.
Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

}  // namespace yardwright::turn
