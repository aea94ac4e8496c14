#include <catch2/catch.hpp>
#include <cstdio>

#include "geom/drain/storm/surface_flow.hpp"
#include "tests/geom/drain/storm/random_storm.hpp"

using namespace yardwright::drain;
using storm_builds::StormEnd;

namespace {

/// Of the vectors that the shipped kernel chooses on this machine.
int shipped_bits() {
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
  if (__builtin_cpu_supports("avx512f")) return 512;
  if (__builtin_cpu_supports("avx2")) return 256;
#endif
  return 128;
}

bool runs_long_vectors() {
#if defined(__x86_64__) && defined(__GNUC__)
  return __builtin_cpu_supports("avx2");
#else
  return false;
#endif
}

}  // namespace

TEST_CASE("A storm has the same bits with vector instructions of any length and without", "[storm]") {
  std::printf("storms compared: as shipped (at most %d bits), 256 bits%s, 128 bits, single numbers\n", shipped_bits(),
              runs_long_vectors() ? "" : " (not on this machine)");
  for (const unsigned seed : {1U, 2U, 3U, 4U, 5U}) {
    INFO("seed " << seed);
    const StormEnd as_shipped = storm_builds::random_storm<storm::SurfaceFlow>(seed);
    REQUIRE(as_shipped.left_m3 > 1);
    REQUIRE((as_shipped == storm_builds::storm_by_single_numbers(seed)));
    REQUIRE((as_shipped == storm_builds::storm_by_short_vectors(seed)));
    if (runs_long_vectors()) REQUIRE((as_shipped == storm_builds::storm_by_long_vectors(seed)));
  }
}
