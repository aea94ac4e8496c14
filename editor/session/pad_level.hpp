// The level that a new pad begins with.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::session {

/// At which its cut makes just its fill, by the yard's shrink, to a tenth of a foot or a twentieth of a metre; the ground's at
/// its first corner where it touches no ground, and 0 where the site has no levels.
double even_pad_level_m(const Site& site, const Pad& pad);

}  // namespace yardwright::session
