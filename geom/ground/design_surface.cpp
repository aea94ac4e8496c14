#include "geom/ground/design_surface.hpp"

namespace yardwright {

DesignSurface design_surface(const Site& site) { return {site.ground.levels, site.ground.levels}; }

}  // namespace yardwright
