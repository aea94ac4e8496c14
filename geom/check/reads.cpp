#include "geom/check/reads.hpp"

#include <algorithm>

#include "geom/ground/design_surface.hpp"

namespace yardwright {

namespace {

template <class... Kinds>
bool is_one_of(const Thing& thing) {
  return (std::holds_alternative<Kinds>(thing) || ...);
}

/// What only takes water, and is driven over.
bool is_drain(const Thing& thing) {
  return is_one_of<CatchBasin, TrenchDrain, TileLine, Downspout, ReceivingDitch, Curb>(thing);
}

/// Things that only the drawing reads.
bool is_paper(const Thing& thing) { return is_one_of<Picture, Dimension>(thing); }

bool reads_kind(Question question, const Thing& thing) {
  switch (question) {
    case Question::reach:
      return shapes_ground(thing) ||
             (!is_paper(thing) && !is_drain(thing) &&
              !is_one_of<Drive, Route, Gate, Scale, Well, OverheadLine, Culvert, Tunnel, Cover, Tank>(thing));
    case Question::drain: return !is_paper(thing) && !is_one_of<Gate, Spout, OverheadLine>(thing);
    case Question::pace: return is_one_of<Bin, Leg, Dryer, OverheadHolding, Receiving, Conveyor, Spout>(thing);
    case Question::turn:
    case Question::clear:
    case Question::grow: return !is_paper(thing) && !is_drain(thing) && !is_one_of<Cover>(thing);
  }
  return true;
}

/// Everything but the words on the title block and the phases, which no question reads.
Site without_words(const Site& site) {
  Site slice;
  slice.lot = site.lot;
  slice.ground = site.ground;
  slice.rule_overrides = site.rule_overrides;
  return slice;
}

}  // namespace

Site read_by(Question question, const Site& site) {
  Site slice = without_words(site);
  if (question == Question::drain) slice.storm = site.storm;
  if (question == Question::pace) slice.ground = {};
  std::ranges::copy_if(site.items, std::back_inserter(slice.items),
                       [&](const Item& item) { return reads_kind(question, item.thing); });
  return slice;
}

Site read_by_surface(const Site& site) {
  Site slice;
  slice.ground = site.ground;
  std::ranges::copy_if(site.items, std::back_inserter(slice.items),
                       [](const Item& item) { return shapes_ground(item.thing); });
  return slice;
}

}  // namespace yardwright
