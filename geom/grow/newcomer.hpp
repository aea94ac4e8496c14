// A thing that is to be placed on a yard whose questions have been answered, and the yard with it in place. Wherever
// it is put, its facing stays.
#pragma once

#include "geom/check/check.hpp"
#include "geom/shape/spread.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

/// `site` is the yard as of the phase that is asked about, `answers` are its own, `rules` those in force.
struct Newcomer {
  const Site& site;
  const Answers& answers;
  const RuleBook& rules;
  Item item;       ///< with the next free id
  Outline shape;   ///< as it covers the ground, with its place at the origin
  Outline behind;  ///< that turned half around: what is grown by it holds the places at which the thing would meet it

  Thing at(SitePoint place) const;
};

/// Nothing for things that cover no ground: lines, words, what is walked or driven over.
std::optional<Newcomer> newcomer(const Site& site, const Answers& answers, const RuleBook& rules, const Thing& thing,
                                 int phase);

/// Whether grain comes to it through a spout.
bool is_filled_by_spout(const Thing& thing);

}  // namespace yardwright::grow
