// The flow over a grid of levels, written out for another tool to be held against: reads LEVELS, 32-bit floats row by row
// from the south-west, and writes beside it .filled (floats), .receiver, .above, .depression (32-bit whole numbers, -1 for
// none) in the same order, and .depressions, a line each: cells, depth in m, volume in m3.
#include <fmt/format.h>
#include <fmt/ostream.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "geom/drain/flow.hpp"

using namespace yardwright;

namespace {

template <class Number>
void write(const std::string& path, const std::vector<Number>& numbers) {
  std::ofstream{path, std::ios::binary}.write(reinterpret_cast<const char*>(numbers.data()),
                                              static_cast<std::streamsize>(numbers.size() * sizeof(Number)));
}

void write(const std::string& path, const std::vector<drain::Depression>& depressions) {
  std::ofstream file{path};
  for (const drain::Depression& one : depressions)
    fmt::print(file, "{} {} {}\n", one.cells, one.depth_m, one.volume_m3);
}

}  // namespace

int main(int count, char** words) {
  if (count != 5) {
    fmt::print(stderr, "usage: flow_of_terrain LEVELS COLUMNS ROWS CELL_M\n");
    return 2;
  }
  const std::string path = words[1];
  const GridFrame frame{{0, 0}, std::atof(words[4]), std::atoi(words[2]), std::atoi(words[3])};
  std::vector<float> levels(frame.cells());
  const auto bytes = static_cast<std::streamsize>(levels.size() * sizeof(float));
  std::ifstream file{path, std::ios::binary};
  if (!file.read(reinterpret_cast<char*>(levels.data()), bytes)) {
    fmt::print(stderr, "flow_of_terrain: {} does not hold {} by {} levels\n", path, frame.columns, frame.rows);
    return 2;
  }
  const drain::Flow flow = drain::flow_over(LevelGrid{frame, std::move(levels)});
  write(path + ".filled", flow.filled_m);
  write(path + ".receiver", flow.receiver);
  write(path + ".above", flow.cells_above);
  write(path + ".depression", flow.depression);
  write(path + ".depressions", flow.depressions);
  return 0;
}
