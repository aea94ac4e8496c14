// Puts together invented yards: items with running ids, and ground from a formula.
#pragma once

#include <functional>
#include <string>
#include <utility>

#include "geom/site/edit.hpp"

namespace yardwright::scenes {

class SceneBuilder {
 public:
  explicit SceneBuilder(Site site) : site_{std::move(site)} {}

  ItemId add(std::string name, Thing thing, int phase = 0) {
    const ItemId id = next_id(site_);
    site_.items.push_back({id, std::move(name), phase, std::nullopt, std::move(thing)});
    return id;
  }

  void spout(ItemId leg, ItemId receiver, GrainState state = GrainState::dry, int phase = 0) {
    add("", Spout{.from = leg, .to = receiver, .state = state, .supported = true}, phase);
  }

  const Site& site() const { return site_; }

 private:
  Site site_;
};

/// Levels of a formula of the place, over a frame.
LevelGrid levels_of(const GridFrame& frame, const std::function<double(SitePoint)>& level_m);

/// Corners of a round pad under a bin.
SitePath ring_around(SitePoint centre, double radius_m);

}  // namespace yardwright::scenes
