// What of Reach is worth showing now: the spout of the side view and the rings on the plan, by what is selected or
// pointed at.
#pragma once

#include "editor/session/session.hpp"
#include "geom/check/check.hpp"
#include "geom/site/item_verdict.hpp"

namespace yardwright::session {

/// The spout that is selected or pointed at, else the worst; null where no spout can be seen.
const reach::CheckedSpout* seen_spout(const Session& session, const Answers& answers);

/// The rings of the selected leg, or those of the selected bin's size, else the one of the spout that is seen; each once,
/// however many bins share a size.
std::vector<const reach::ReachRing*> seen_rings(const Session& session, const Answers& answers);

}  // namespace yardwright::session
