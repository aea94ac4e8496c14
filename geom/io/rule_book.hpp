// Reads the rule book of assets/rules.json.
#pragma once

#include "geom/site/rule.hpp"

namespace yardwright {

RuleBook shipped_rule_book();

}  // namespace yardwright
