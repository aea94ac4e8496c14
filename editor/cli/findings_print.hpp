// Findings on the command line: as lines for people and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string_view>

#include "geom/site/finding.hpp"

namespace yardwright::cli {

std::string_view word(Question question);
std::string_view word(Verdict verdict);

nlohmann::ordered_json as_json(const Finding& finding, UnitSystem units);
nlohmann::ordered_json as_json(const Mend& mend, UnitSystem units);

/// The verdict and the findings of a question; what passes is counted, or listed too.
void print_findings(std::string_view question, const Findings& findings, UnitSystem units, bool all);

/// The last line of every answer.
void print_caution();

}  // namespace yardwright::cli
