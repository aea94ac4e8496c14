// A finding in words, in the reader's units: the one place where its numbers become sentences.
#pragma once

#include <string>

#include "geom/site/finding.hpp"

namespace yardwright {

/// "29.2° of 37.0° needed", or "3.1 ft, at most 2.0 ft"; empty for a check that did not run.
/// The title as the beginning of a sentence: it may begin with the name of a vehicle.
std::string headline(const Finding& finding);
std::string measured_words(const Finding& finding, UnitSystem units);
/// "short by 7.8°" or "+2.1 ft to spare"; empty for a check that did not run.
std::string margin_words(const Finding& finding, UnitSystem units);
/// "raise Leg 1 by 17.4 ft to 100 ft".
std::string mend_words(const Mend& mend, UnitSystem units);
/// "handbook: MWPS-13 (from memory)".
std::string basis_words(const Finding& finding);
/// All of it on one line.
std::string sentence(const Finding& finding, UnitSystem units);

}  // namespace yardwright
