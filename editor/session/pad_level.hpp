// The level that a new pad begins with.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::session {

/// The mean of today's ground inside the outline, where cut and fill are about even (side slopes left out), to a tenth
/// of a foot or a twentieth of a metre; 0 where the site has no levels.
double even_pad_level_m(const Site& site, const SitePath& outline);

}  // namespace yardwright::session
