#include "tests/scenes/scene_builder.hpp"

#include "geom/shape/polygon.hpp"

namespace yardwright::scenes {

LevelGrid levels_of(const GridFrame& frame, const std::function<double(SitePoint)>& level_m) {
  std::vector<float> levels(frame.cells());
  for (std::size_t i = 0; i < levels.size(); ++i) {
    levels[i] = static_cast<float>(level_m(frame.centre(frame.cell_at_offset(i))));
  }
  return {frame, std::move(levels)};
}

SitePath ring_around(SitePoint centre, double radius_m) { return disc(centre, radius_m, 16).outer; }

}  // namespace yardwright::scenes
