#include "geom/drain/channel.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254;
constexpr double cfs = ft * ft * ft;

}  // namespace

TEST_CASE("A trapezoid at a depth carries the flow that HEC-22 prints", "[drain]") {
  // HEC-22 4th ed., example 6.1 (read): 55.7 cfs and 4.7 ft/s; exact areas give 55.91.
  const auto flow = flow_at_depth(Channel{2.6 * ft, 3, 0.01, 0.03}, 1.6 * ft);
  CHECK(flow.flow_m3_per_s / cfs == Approx(55.7).epsilon(0.005));
  CHECK(flow.speed_m_per_s / ft == Approx(4.7).epsilon(0.01));
}

TEST_CASE("A pipe half full carries the flow of the textbook problems", "[drain]") {
  // 6-ft corrugated drain, 1 in 500, n 0.024: 51.29 cfs, 3.628 ft/s (read in a package vignette).
  const auto drain = flow_at_depth(Pipe{6 * ft, 1.0 / 500, 0.024}, 3 * ft);
  CHECK(drain.flow_m3_per_s / cfs == Approx(51.29).epsilon(0.001));
  CHECK(drain.speed_m_per_s / ft == Approx(3.628).epsilon(0.001));
  // 200-mm tile, 0.001, n 0.013 (inputs read, computed).
  CHECK(flow_at_depth(Pipe{0.2, 0.001, 0.013}, 0.1).flow_m3_per_s == Approx(0.005186).epsilon(0.001));
}

TEST_CASE("An 18-inch pipe at one percent carries 10.5 cubic feet a second when full", "[drain]") {
  // Manning (computed).
  const auto full = flow_at_depth(Pipe{18 * inch, 0.01, 0.013}, 18 * inch);
  CHECK(full.flow_m3_per_s / cfs == Approx(10.50).epsilon(0.002));
  CHECK(full.speed_m_per_s / ft == Approx(5.94).epsilon(0.002));
  CHECK(full.froude_ratio == 0);
}

TEST_CASE("Part-full pipes carry the known shares of their full flow", "[drain]") {
  // Exact geometry of the circle, constant n (computed).
  const Pipe pipe{1, 0.01, 0.013};
  const double full = flow_at_depth(pipe, 1).flow_m3_per_s;
  CHECK(flow_at_depth(pipe, 0.3).flow_m3_per_s / full == Approx(0.1958).margin(0.0005));
  CHECK(flow_at_depth(pipe, 0.8).flow_m3_per_s / full == Approx(0.9775).margin(0.0005));
  CHECK(flow_at_depth(pipe, 0.938).flow_m3_per_s / full == Approx(1.0757).margin(0.0005));
}

TEST_CASE("Where two depths of a pipe carry a flow the lower is given, and more than the most is surcharged",
          "[drain]") {
  const Pipe pipe{1, 0.01, 0.013};
  const double full = flow_at_depth(pipe, 1).flow_m3_per_s;
  const auto twice = normal_flow(pipe, 1.05 * full);
  CHECK(twice.state == FlowState::steady);
  CHECK(twice.depth_m < 0.938);
  CHECK(twice.flow_m3_per_s == Approx(1.05 * full));
  CHECK(normal_flow(pipe, 1.08 * full).state == FlowState::surcharged);
}

TEST_CASE("A 15-inch pipe runs part full at three cubic feet a second", "[drain]") {
  // n 0.013, 0.5 %: depth 0.7390 ft, 3.972 ft/s, full 4.568 cfs (computed).
  const Pipe pipe{15 * inch, 0.005, 0.013};
  const auto flow = normal_flow(pipe, 3 * cfs);
  CHECK(flow.depth_m / ft == Approx(0.7390).epsilon(0.002));
  CHECK(flow.speed_m_per_s / ft == Approx(3.972).epsilon(0.002));
  CHECK(flow_at_depth(pipe, 15 * inch).flow_m3_per_s / cfs == Approx(4.568).epsilon(0.002));
}

TEST_CASE("Swales run at the depths that Manning gives", "[drain]") {
  // V, sides 4:1, n 0.035, 1 %, 10 cfs: 0.9824 ft, 2.590 ft/s, critical 0.8276 ft (computed).
  const Channel vee{0, 4, 0.01, 0.035};
  CHECK(normal_flow(vee, 10 * cfs).depth_m / ft == Approx(0.9824).epsilon(0.002));
  CHECK(normal_flow(vee, 10 * cfs).speed_m_per_s / ft == Approx(2.590).epsilon(0.002));
  CHECK(critical_depth_m(vee, 10 * cfs) / ft == Approx(0.8276).epsilon(0.002));
  // Trapezoid, bottom 4 ft, 4:1, n 0.035, 0.5 %, 25 cfs: 1.1692 ft, 2.464 ft/s, Froude 0.498 (computed).
  const auto flow = normal_flow(Channel{4 * ft, 4, 0.005, 0.035}, 25 * cfs);
  CHECK(flow.depth_m / ft == Approx(1.1692).epsilon(0.003));
  CHECK(flow.speed_m_per_s / ft == Approx(2.464).epsilon(0.003));
  CHECK(flow.froude_ratio == Approx(0.498).epsilon(0.003));
}

TEST_CASE("The depth of a flow carries that flow", "[drain]") {
  std::mt19937 random{20261125};
  std::uniform_real_distribution<double> width_m{0, 3}, side{0.5, 10}, slope{0.0005, 0.1}, flow_m3_per_s{1e-4, 20};
  for (int i = 0; i < 500; ++i) {
    const Channel channel{width_m(random), side(random), slope(random), 0.03};
    const double wanted = flow_m3_per_s(random);
    const auto flow = normal_flow(channel, wanted);
    REQUIRE(flow.state == FlowState::steady);
    REQUIRE(flow_at_depth(channel, flow.depth_m).flow_m3_per_s == Approx(wanted).epsilon(1e-8));
  }
}

TEST_CASE("A level channel has no uniform flow, and no flow has no depth", "[drain]") {
  CHECK(normal_flow(Channel{1, 2, 0, 0.03}, 1).state == FlowState::no_slope);
  CHECK(flow_at_depth(Pipe{1, -0.01, 0.013}, 0.5).state == FlowState::no_slope);
  CHECK(normal_flow(Pipe{1, 0.01, 0.013}, 0).state == FlowState::dry);
}
