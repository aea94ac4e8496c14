// A farm grain yard: everything that was drawn or typed, and nothing that can be computed from it. A plain value:
// copy it, compare it, hand it to a question. Metres east and north of an origin; levels in metres above the
// datum of the ground.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "geom/shape/grid.hpp"
#include "geom/shape/polygon.hpp"
#include "geom/site/item.hpp"
#include "geom/site/rule.hpp"
#include "geom/site/storm.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

enum class LotEdge : std::uint8_t { neighbour, road, own_field };
constexpr std::array<std::string_view, 3> names_of(LotEdge) { return {"neighbour", "road", "own-field"}; }

/// The land: a ring of corners; edge i runs from corner i to the next. `edges` is as long as `corners`.
struct Lot {
  std::vector<SitePoint> corners;
  std::vector<LotEdge> edges;
  bool operator==(const Lot&) const = default;
};

template <MaybeConst<Lot> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(ring_field("corners", "corners", "of the lot, in order around it"), self.corners);
  visit(Field{"edges", "edges", "what lies across each edge; edge i runs from corner i to the next"}, self.edges);
}

/// The ground as it lies today. Without levels the yard is taken as flat at level 0, and whoever needs levels
/// says so.
struct Ground {
  LevelGrid levels;
  std::string file;                ///< GeoTIFF beside the site file
  std::string source;              ///< where the levels came from, in words
  double groundwater_depth_m = 0;  ///< highest of the year, below the existing ground; 0 is not known
  double shrink_ratio = 0;         ///< of cut earth that is filled and rolled
  double swell_ratio = 0;          ///< of cut earth that is loaded loose
  bool operator==(const Ground&) const = default;
};

/// The words of it; the levels have a file of their own.
template <MaybeConst<Ground> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"file", "file", "GeoTIFF of its levels, in the folder of the site file; empty for level ground"},
        self.file);
  visit(Field{"source", "source", "where the levels came from, in words"}, self.source);
  visit(Field{"groundwater-depth", "groundwater depth",
              "of the highest groundwater of the year, below the existing ground; 0 is not known", Quantity::length, 0,
              100},
        self.groundwater_depth_m);
  visit(Field{"shrink", "shrink", "of cut earth once it is filled and rolled", Quantity::grade, 0, 0.5},
        self.shrink_ratio);
  visit(Field{"swell", "swell", "of cut earth once it is loaded loose", Quantity::grade, 0, 1}, self.swell_ratio);
}

/// What ties the site frame to the earth: the projected position of the origin. EPSG 0 is "not known".
struct EarthTie {
  int epsg = 0;
  double easting_m = 0;
  double northing_m = 0;
  bool operator==(const EarthTie&) const = default;
};

template <MaybeConst<EarthTie> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"epsg", "EPSG code", "of the projected coordinates; 0 is not known", Quantity::count, 0, 999999},
        self.epsg);
  visit(Field{"easting", "easting", "of the site's origin", Quantity::length, -1e8, 1e8}, self.easting_m);
  visit(Field{"northing", "northing", "of the site's origin", Quantity::length, -1e8, 1e8}, self.northing_m);
}

/// Words for the title block of the sheets.
struct TitleBlock {
  std::string owner;
  std::string place;
  std::string drawn_by;
  std::string date;
  std::string revision;
  bool operator==(const TitleBlock&) const = default;
};

template <MaybeConst<TitleBlock> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"owner", "owner", "whose yard it is"}, self.owner);
  visit(Field{"place", "place", "where it lies, in words"}, self.place);
  visit(Field{"drawn-by", "drawn by", "who drew it"}, self.drawn_by);
  visit(Field{"date", "date", "of the drawing"}, self.date);
  visit(Field{"revision", "revision", "of the drawing: A, B, 1, 2"}, self.revision);
}

struct Site {
  std::string name = "Untitled yard";
  UnitSystem units = UnitSystem::us;
  TitleBlock title;
  EarthTie tie;
  Lot lot;
  Ground ground;
  Storm storm;
  std::vector<std::string> phases{"existing"};  ///< names of phase 0, 1, 2, ...
  std::vector<RuleOverride> rule_overrides;     ///< in order of rule id
  std::vector<Item> items;                      ///< in order of placing
  bool operator==(const Site&) const = default;
};

const Item* find(const Site& site, ItemId id);
/// The id for the next item.
ItemId next_id(const Site& site);
/// The site as it stands once `phase` is built: later items are left out, and what is gone by then.
Site as_of(const Site& site, int phase);

/// Calls `use(item, kind)` for every item of a kind, in the site's order.
template <class Kind, class Use>
void for_each(const Site& site, Use use) {
  for (const Item& item : site.items) {
    if (const Kind* kind = as<Kind>(item)) use(item, *kind);
  }
}

/// A lot of a length (east) and width (north) with its south-west corner at the origin, all edges `edge`.
Lot rectangular_lot(double length_m, double width_m, LotEdge edge = LotEdge::neighbour);

}  // namespace yardwright
