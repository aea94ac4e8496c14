// A layout of a yard that grows: how high its legs discharge, and which bins of a brief stand where. What builds it follows from it:
// every bin with a pad where the ground does not fall away from it, and with the spout that fills it. Site frame, metres.
// docs/methods/grow.md
#pragma once

#include <optional>
#include <vector>

#include "geom/grow/harm.hpp"
#include "geom/site/catalog/price_book.hpp"
#include "geom/site/growth_brief.hpp"

namespace yardwright::grow {

/// A bin of a size of the brief, at its place.
struct Stand {
  std::size_t size = 0;
  SitePoint at;
  bool operator==(const Stand&) const = default;
};

struct Layout {
  std::vector<double> discharge_m;  ///< of each leg, in the site's order
  std::vector<Stand> stands;
  bool operator==(const Layout&) const = default;
};

/// A yard that is to grow, answered as it stands in its last phase, and what is wanted of it. Stays where it is made: others
/// refer to its parts.
struct GrowthTask {
  /// `catalogs` are the shipped ones.
  GrowthTask(Site whole, GrowthBrief brief, PriceBook book, const Catalogs& catalogs);
  GrowthTask(const GrowthTask&) = delete;
  GrowthTask& operator=(const GrowthTask&) = delete;

  Site whole;  ///< with all its phases
  Site site;   ///< as of the last one
  GrowthBrief brief;
  PriceBook book;
  Catalogs shipped, catalogs;  ///< the second with the site's own rules
  Answers answers;             ///< of the site; Grow is not asked
  std::vector<Item> legs;
  Bin model;  ///< what every new bin is but for its size: the dry store that was placed last

  CheckedYard checked() const { return {site, answers, catalogs}; }
  /// The first number that is new.
  ItemId first_new() const { return next_id(whole); }
  Bin bin_of(std::size_t size) const;
  Layout as_it_is() const;
};

/// The yard with its legs as high as that; one that is raised gets a distributor with the brief's outlets, or keeps its own
/// where that has more.
Site with_legs(const GrowthTask& task, const std::vector<double>& discharge_m);

/// What builds it, in a phase after the last. Nothing where a bin is filled by no leg, or hangs in a spout's way.
std::optional<Edits> built(const GrowthTask& task, const Layout& layout);

}  // namespace yardwright::grow
