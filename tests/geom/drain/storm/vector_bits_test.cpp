#include <catch2/catch.hpp>

#include "geom/drain/storm/surface_flow.hpp"
#include "tests/geom/drain/storm/random_storm.hpp"

using namespace yardwright::drain;
using storm_builds::StormEnd;

TEST_CASE("A storm has the same bits with vector instructions, long or short, and without", "[storm]") {
#if !defined(__x86_64__) || !defined(__GNUC__) || defined(__clang__) || defined(__SANITIZE_ADDRESS__)
  WARN("this build has no code for 256-bit vectors: the others were compared");
#else
  if (!__builtin_cpu_supports("avx2")) WARN("this machine has no 256-bit vectors: the others were compared");
#endif
  for (const unsigned seed : {1U, 2U, 3U, 4U, 5U}) {
    INFO("seed " << seed);
    const StormEnd as_shipped = storm_builds::random_storm<storm::SurfaceFlow>(seed);
    REQUIRE(as_shipped.left_m3 > 1);
    REQUIRE(as_shipped == storm_builds::storm_by_single_numbers(seed));
    REQUIRE(as_shipped == storm_builds::storm_by_short_vectors(seed));
  }
}
