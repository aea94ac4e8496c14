// The questions in words, as the chips and the right panel say them.
#pragma once

#include <string>

#include "geom/site/finding.hpp"

namespace yardwright::session {

std::string_view name_of(Question question);
/// "Can every bin be filled from the leg by gravity?"
std::string_view asks(Question question);

/// The worst finding in a few words: "−17.4 ft", "2 to mend", "passes", "not asked"; "some pass" where nothing that
/// was checked falls short and something was not.
std::string worst_in_short(const Findings& findings, UnitSystem units);

/// How many findings of each verdict: "1 to mend, 3 pass, 2 not checked"; nothing of no findings.
std::string counts_in_words(const Findings& findings);

/// The same with what it is about: "-7.8°" and the like from one finding.
std::string margin_in_short(const Finding& finding, UnitSystem units);

}  // namespace yardwright::session
