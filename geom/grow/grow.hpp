// Grow: where does the next bin go? Finds the ground on which one more bin of a size can stand, filled by a leg and
// against no rule, its best spots, and what is in the way elsewhere. Site frame, metres. Method, tolerances and limits:
// docs/methods/grow.md.
#pragma once

#include "geom/grow/allowed_region.hpp"
#include "geom/site/mend_search.hpp"

namespace yardwright::grow {

struct Answer {
  Findings findings;
  Thing thing;           ///< what is sought room for
  AllowedRegion region;  ///< of its place; empty where nothing could be sought
  std::vector<Spot> spots;
  double free_m2 = 0;
  bool mends_sought = true;
};

/// What a yard's next bin is taken to be: like the bin that was placed last, or of the usual size where there is none.
Thing next_bin(const Site& site);

/// `answers` are of this site, `catalogs` hold the rules in force; without a thing the next bin is sought room for. `later` is
/// what the whole yard builds after the phase as of which `site` stands.
Answer ask(const Site& site, const Answers& answers, const Catalogs& catalogs, const Thing* thing = nullptr,
           MendSearch search = {}, const std::vector<Item>& later = {});

/// What of a whole yard is built after a phase.
std::vector<Item> built_after(const Site& whole, int phase);

/// The answers with Grow's findings among them; `catalogs` are the shipped ones.
Answers with_growth(Answers answers, const Site& site, const Catalogs& catalogs, const std::vector<Item>& later = {});

/// "stands too near to North 2": why the place of a newcomer may not lie there.
std::string reason_words(const KeepOff& reason, const Site& site);

}  // namespace yardwright::grow
