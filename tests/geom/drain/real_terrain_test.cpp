// Real ground: the elevation sample of Debian's python-matplotlib-data (a fault near Jacksboro, 344 x 403 cells of whole
// metres, so with many flats and ties), unpacked by the Python that the tests of the house need as well.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <optional>

#include "geom/drain/flow.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr const char* unpack_sample =
    "python3 -c \"import sys, zipfile; sys.stdout.buffer.write(zipfile.ZipFile("
    "'/usr/share/matplotlib/mpl-data/sample_data/jacksboro_fault_dem.npz').read('elevation.npy'))\" 2>/dev/null";
constexpr int rows = 344, columns = 403;

/// An array file: a header whose length stands at byte 8, then rows of 16-bit numbers.
std::optional<LevelGrid> sample_terrain() {
  std::FILE* pipe = popen(unpack_sample, "r");
  if (pipe == nullptr) return std::nullopt;
  std::vector<char> bytes(std::size_t{2} * rows * columns + 128);
  bytes.resize(std::fread(bytes.data(), 1, bytes.size(), pipe));
  pclose(pipe);
  if (bytes.size() < std::size_t{2} * rows * columns) return std::nullopt;
  std::vector<std::int16_t> numbers(std::size_t{rows} * columns);
  const std::size_t header = bytes.size() - 2 * numbers.size();
  std::memcpy(numbers.data(), bytes.data() + header, 2 * numbers.size());
  return LevelGrid{GridFrame{{0, 0}, 90, columns, rows}, {numbers.begin(), numbers.end()}};
}

}  // namespace

TEST_CASE("Real ground fills as the textbook fills it, once, and drains whole", "[drain]") {
  const auto ground = sample_terrain();
  if (!ground) FAIL("the sample terrain is missing; apt-get install python-matplotlib-data brings it");
  const Flow flow = flow_over(*ground);
  CHECK(*std::ranges::max_element(flow.level_m) < 2000);
  CHECK(*std::ranges::min_element(flow.level_m) > 0);
  CHECK(flow.depressions.size() > 100);
  REQUIRE(flow.filled_m == textbook_filled_m(*ground));
  REQUIRE(flow_over(LevelGrid{ground->frame(), flow.filled_m}).filled_m == flow.filled_m);
  std::int32_t out = 0;
  for (std::size_t i = 0; i < flow.receiver.size(); ++i) out += flow.receiver[i] == outside ? flow.cells_above[i] : 0;
  CHECK(out == rows * columns);
}
