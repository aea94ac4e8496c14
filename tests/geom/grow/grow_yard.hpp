// What the tests of Grow share: a yard with its answers, at hand for newcomers.
#pragma once

#include <catch2/catch.hpp>

#include "geom/grow/allowed_region.hpp"
#include "geom/io/catalogs.hpp"

namespace yardwright::grow {

struct GrowYard {
  explicit GrowYard(Site yard)
      : site{std::move(yard)}, rules{shipped_catalogs().rules.with(site.rule_overrides)}, answers{check_of(site)} {}

  static Answers check_of(const Site& site) {
    Answers answers;
    answers.surface = design_surface(site);
    const Catalogs& catalogs = shipped_catalogs();
    answers.turn = std::make_shared<turn::Answer>(turn::ask(site, answers.surface, catalogs, {MendSearch{false}}));
    answers.drain = std::make_shared<drain::Answer>(drain::ask(site, answers.surface, catalogs, {MendSearch{false}}));
    return answers;
  }

  Newcomer with(const Thing& thing) const { return *newcomer(site, answers, rules, thing, 0); }

  Site site;
  RuleBook rules;
  Answers answers;
};

inline const KeepOff* reason(const AllowedRegion& region, std::string_view rule, ItemId item = {}) {
  for (const KeepOff& one : region.reasons) {
    if (one.rule == rule && (!item || one.item == item)) return &one;
  }
  return nullptr;
}

}  // namespace yardwright::grow
