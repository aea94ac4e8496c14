// The surface flow once more, in a namespace of its own; the options it is compiled with stand in tests/CMakeLists.txt.
#define FOR_EACH_MACHINE
#define storm storm_by_single_numbers_alone
#include "geom/drain/storm/flow_kernel.cpp"
#include "geom/drain/storm/surface_flow.cpp"
#undef storm

#include "tests/geom/drain/storm/random_storm.hpp"

namespace yardwright::drain::storm_builds {

StormEnd storm_by_single_numbers(unsigned seed) {
  return random_storm<storm_by_single_numbers_alone::SurfaceFlow>(seed);
}

}  // namespace yardwright::drain::storm_builds
