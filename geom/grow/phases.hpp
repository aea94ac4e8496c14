// A yard that is built in phases, phase by phase: how it stands with every question once each is built, what newly wants there,
// what it adds, costs and takes away, and what of the phases before is in its way. docs/methods/grow.md
#pragma once

#include "geom/grow/compare.hpp"

namespace yardwright::grow {

/// What stands in the way of a later phase: with these gone its finding passes or is gone, and nothing else is changed.
struct Hindrance {
  std::vector<ItemId> items;  ///< one, or all that one phase adds
  int phase = 0;              ///< in which they are built
  Finding finding;            ///< of the later phase
};

struct PhaseStep {
  int phase = 0;
  std::vector<ItemId> built, gone;
  QuantityChange change;  ///< from the phase before; of the first: all that stands is built
  Cost cost;              ///< of what is built
  double kept =
      0;  ///< price of what a raised leg has already, and of what is drawn anew for it as it was: not paid again
  Findings
      broken;  ///< worse than in the phase before, or new and not passing; of the first: all that fails or wants caution
  Findings settled;                   ///< failed or wanted caution in the phase before and passes, or is gone
  std::vector<Hindrance> hindrances;  ///< of what is broken
  double paid() const { return cost.sum - kept; }
};

struct PhasePlan {
  Comparison comparison;         ///< an option a phase, by its name
  std::vector<PhaseStep> steps;  ///< as many
};

/// `catalogs` are the shipped ones.
PhasePlan phases_of(const Site& whole, const PriceBook& book, const Catalogs& catalogs);

/// What each phase builds, takes away, costs; then how it stands, as a comparison tells it.
std::vector<ComparedRow> phase_rows(const PhasePlan& plan, const Catalogs& catalogs);

/// "North 2, of today": who stands in the way.
std::string hindrance_words(const Hindrance& hindrance, const Site& whole);

}  // namespace yardwright::grow
