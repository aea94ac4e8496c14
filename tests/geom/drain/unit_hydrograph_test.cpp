#include "geom/drain/unit_hydrograph.hpp"

#include <array>
#include <catch2/catch.hpp>

#include "geom/drain/runoff.hpp"
#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254, acre = 43560 * ft * ft, hour = 3600;
constexpr double cfs = ft * ft * ft;

MassCurve nrcs(StormType type) { return curve_of(type, {}, shipped_catalogs().storms); }

}  // namespace

// NEH 630 ch. 16, the curvilinear unit hydrograph (read second-hand): 3/8 of the water is under the rising limb, and the
// peak factor 484 is 645.33 by the area under it.
TEST_CASE("The unit hydrograph has the factor 484 and three eighths of its water before its peak", "[drain]") {
  double area = 0, rising = 0;
  constexpr double step = 0.001;
  for (double at = step / 2; at < 5; at += step) {
    area += unit_flow_ratio(at) * step;
    if (at < 1) rising += unit_flow_ratio(at) * step;
  }
  CHECK(645.33 / area == Approx(484).epsilon(0.005));
  CHECK(rising / area == Approx(0.375).epsilon(0.01));
  CHECK(unit_flow_ratio(1) == 1);
  CHECK(unit_flow_ratio(0) == 0);
  CHECK(unit_flow_ratio(5) == 0);
  CHECK(unit_flow_ratio(6) == 0);
}

// 10 ac, CN 89, 5 in, Type II, Tc 0.1, 0.25 and 0.5 h (computed apart from this code, steps of a minute).
TEST_CASE("A small yard's storm comes through the unit hydrograph with these peaks and all of its water", "[drain]") {
  for (const auto& [concentration_h, peak_cfs] : {std::pair{0.1, 55.3}, {0.25, 45.2}, {0.5, 33.2}}) {
    const auto flow = storm_hydrograph(10 * acre, 89, 5 * inch, concentration_h * hour, nrcs(StormType::ii));
    CHECK(peak_of(flow).flow_m3_per_s / cfs == Approx(peak_cfs).epsilon(0.03));
    CHECK(flow.volume_m3() / cfs == Approx(136920).epsilon(0.001));
  }
}

// TR-55 example 4-1: 345 cfs graphically (from memory). Routed, computed apart from this code: 342 cfs at 12.83 h.
TEST_CASE("The storm of TR-55 example 4-1 peaks at 342 cfs, 12.83 hours in", "[drain]") {
  const auto peak = peak_of(storm_hydrograph(250 * acre, 75, 6 * inch, 1.53 * hour, nrcs(StormType::ii)));
  CHECK(peak.flow_m3_per_s / cfs == Approx(342).epsilon(0.03));
  CHECK(peak.at_s / hour == Approx(12.83).margin(0.1));
}

// The coefficients of TR-55 table F-1 were fitted to routed storms of these types, so that one checks the other: the
// tables of the storms, the unit hydrograph and the graphical method. TR-55 gives them within a tenth or so.
TEST_CASE("Routed and graphical peaks agree for all four storm types", "[drain]") {
  for (const StormType type : {StormType::i, StormType::ia, StormType::ii, StormType::iii}) {
    for (const double concentration_h : {0.3, 0.5, 1.0, 2.0, 4.0}) {
      INFO(names_of(type)[static_cast<std::size_t>(type)] << " " << concentration_h << " h");
      const auto graphical = graphical_peak(200 * acre, 80, 6 * inch, concentration_h * hour, type);
      const auto routed = peak_of(storm_hydrograph(200 * acre, 80, 6 * inch, concentration_h * hour, nrcs(type)));
      REQUIRE(graphical.state == PeakState::computed);
      CHECK(routed.flow_m3_per_s == Approx(graphical.peak_m3_per_s).epsilon(0.12));
    }
  }
}

TEST_CASE("Even rain on hard ground runs as it falls once the water has come together", "[drain]") {
  const MassCurve even{{{0, 0}, {24 * hour, 1}}};
  const auto flow = storm_hydrograph(acre, 100, 0.24, 0.5 * hour, even);  // CN 100 loses nothing: 10 mm an hour
  CHECK(flow.flow_m3_per_s[20 * 60] == Approx(acre * 0.01 / hour));
  CHECK(peak_of(flow).flow_m3_per_s == Approx(acre * 0.01 / hour));
}

TEST_CASE("A rain that the ground takes up gives no peak, at no time", "[drain]") {
  const auto flow = storm_hydrograph(acre, 60, 0.5 * inch, hour, nrcs(StormType::ii));
  CHECK(flow.volume_m3() == 0);
  CHECK(peak_of(flow) == HydrographPeak{});
  CHECK(peak_of({}) == HydrographPeak{});
}
