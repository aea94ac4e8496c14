// The concrete and gravel of one thing, in cubic metres, by the thicknesses of the rules: for counting and pricing, before
// an engineer's drawing. Elementary geometry. docs/methods/grow.md
#pragma once

#include "geom/site/kinds/bin.hpp"
#include "geom/site/kinds/dryer.hpp"
#include "geom/site/kinds/overhead_holding.hpp"
#include "geom/site/kinds/pit_body.hpp"
#include "geom/site/kinds/receiving.hpp"
#include "geom/site/kinds/tunnel.hpp"
#include "geom/site/rule.hpp"

namespace yardwright::grow {

/// A round floor a little beyond the wall, and a ring under the wall from the floor's underside to its foot.
double foundation_m3(const Bin& bin, const RuleBook& rules);
double slab_m3(const Dryer& dryer, const RuleBook& rules);
double slab_m3(const OverheadHolding& bin, const RuleBook& rules);
/// Less the hole of its pit.
double floor_m3(const Receiving& receiving, const RuleBook& rules);
/// Walls from the floor up to the rim, and a floor under them; 0 where it has no depth.
double shell_m3(const PitBody& pit, const RuleBook& rules);
/// Floor, walls and roof.
double shell_m3(const Tunnel& tunnel, const RuleBook& rules);

}  // namespace yardwright::grow
