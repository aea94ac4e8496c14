// A storm over seeded rough ground with walls, pools and dry spots, as any build of the surface flow runs it.
#pragma once

#include <cstdint>
#include <random>
#include <span>
#include <vector>

#include "geom/drain/flow.hpp"

namespace yardwright::drain::storm_builds {

struct StormEnd {
  std::vector<double> depth_m, east_m2_per_s, north_m2_per_s;
  double left_m3 = 0, time_s = 0;
  bool operator==(const StormEnd&) const = default;
};

template <class SurfaceFlow>
StormEnd random_storm(unsigned seed) {
  std::mt19937 random{seed};
  const GridFrame frame{{0, 0}, 1, 61 + static_cast<int>(seed % 7), 43};  // rows of no round length
  const auto below = [&random](unsigned limit) { return static_cast<unsigned>(random() % limit); };
  std::vector<float> bed_m, roughness_n;
  std::vector<std::uint8_t> kind;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    bed_m.push_back(
        static_cast<float>(20 - 0.03 * static_cast<double>(i % 61) + below(400) / 1000.0 + (below(12) == 0 ? 50 : 0)));
    roughness_n.push_back(static_cast<float>(0.01 + below(200) / 1000.0));
    kind.push_back(static_cast<std::uint8_t>(below(3)));
  }
  SurfaceFlow flow{LevelGrid{frame, bed_m}, roughness_n};
  for (int pool = 0; pool < 6; ++pool) flow.add(static_cast<Cell>(below(2000)), below(3000) / 1000.0);
  StormEnd end;
  for (int step = 0; step < 1500; ++step) {
    const double step_s = flow.stable_step_s(2);
    const double rain_m = step < 1000 ? step_s * 5e-5 : 0;
    const std::vector<double> of_kind{rain_m, rain_m / 3, 0};
    flow.rain(kind, std::span{of_kind});
    flow.step(step_s);
    end.time_s += step_s;
  }
  for (Cell cell = 0; cell < static_cast<Cell>(frame.cells()); ++cell) {
    end.depth_m.push_back(flow.depth_m(cell));
    end.east_m2_per_s.push_back(flow.flow_east_m2_per_s(cell));
    end.north_m2_per_s.push_back(flow.flow_north_m2_per_s(cell));
  }
  end.left_m3 = flow.left_m3();
  return end;
}

/// The surface flow compiled anew for the tests: without vector instructions, with those of 128 bits that every machine
/// has, and with those of 256, which not every machine can run.
StormEnd storm_by_single_numbers(unsigned seed);
StormEnd storm_by_short_vectors(unsigned seed);
StormEnd storm_by_long_vectors(unsigned seed);

}  // namespace yardwright::drain::storm_builds
