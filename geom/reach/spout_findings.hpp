// What is judged of one spout, with its mends. Used by ask(); a mend is found with the same functions.
#pragma once

#include "geom/reach/reach.hpp"

namespace yardwright::reach {

/// A spout with its two ends at hand. `site` must outlive it.
struct SpoutCase {
  const Site& site;
  const DesignSurface& surface;
  const RuleBook& rules;
  const Item& spout;
  const Item& leg;
  const Item& receiver;
  SpoutLine line;
};

/// The rule for its grain state.
const Rule& slope_rule(const Spout& spout, const RuleBook& rules);

Finding slope_finding(const SpoutCase& spout);
Finding span_finding(const SpoutCase& spout);
/// Clear of every other solid; nothing stands near: no finding, since there is nothing to measure.
std::optional<Finding> clear_finding(const SpoutCase& spout);

}  // namespace yardwright::reach
