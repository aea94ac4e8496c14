// What a yard takes to build: every work counted and measured, each with the items that it is made of, so that a sum can
// be explained; and what is built and what goes between two states of a yard. Amounts in SI, money is in cost.hpp.
// Thicknesses are rules, for counting alone; the engineer's drawing decides. docs/methods/grow.md
#pragma once

#include <string>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/catalog/work.hpp"

namespace yardwright::grow {

/// What one item has of a line; of earth: all the items that move it.
struct QuantityPart {
  std::vector<ItemId> items;
  int count = 1;
  double amount = 0;
  bool operator==(const QuantityPart&) const = default;
};

struct QuantityLine {
  Work work = Work::bin;
  std::vector<double> size_m;
  std::vector<QuantityPart> parts;

  int count() const;
  double amount() const;  ///< in the SI unit of the work's quantity
  bool operator==(const QuantityLine&) const = default;
};

/// What could not be counted, and why.
struct LeftOut {
  ItemId item;  ///< nothing for the ground
  std::string why;
  bool operator==(const LeftOut&) const = default;
};

struct Quantities {
  std::vector<QuantityLine> lines;  ///< in the order of Work, then of size; none is empty
  std::vector<LeftOut> left_out;
  bool operator==(const Quantities&) const = default;
};

/// The line of that work and size; null where there is none.
const QuantityLine* find(const Quantities& quantities, Work work, const std::vector<double>& size_m);
/// Of every size together.
double amount_of(const Quantities& quantities, Work work);

/// Of everything that stands on the site: give it as of a phase. `catalogs` are the shipped ones.
Quantities quantities(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

/// Earth from one surface to another, moved by these items; told as left out where they are no two of one frame.
Quantities earth_between(const LevelGrid& before, const LevelGrid& after, const Ground& ground,
                         const std::vector<ItemId>& movers);

/// What is built and what is taken away to make one state of a yard of another. An item that stays with the same amounts is
/// in neither. Line by line, built less gone is what the states differ by, but for earth: it is moved from the one design
/// surface to the other.
struct QuantityChange {
  Quantities built, gone;
};
QuantityChange quantity_change(const Site& before, const Site& after, const Catalogs& catalogs);

/// The same where the surfaces are known already.
struct YardState {
  const Site& site;
  const DesignSurface& surface;
};
QuantityChange quantity_change(const YardState& before, const YardState& after, const Catalogs& catalogs);

}  // namespace yardwright::grow
