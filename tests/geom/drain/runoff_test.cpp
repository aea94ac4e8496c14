#include "geom/drain/runoff.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <numeric>
#include <random>

#include "geom/drain/unit_hydrograph.hpp"
#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254, acre = 43560 * ft * ft, hour = 3600;
constexpr double cfs = ft * ft * ft;
constexpr double square_mile = 640 * acre;
constexpr std::array every_type{StormType::i, StormType::ia, StormType::ii, StormType::iii};

MassCurve curve_of(StormType type) { return yardwright::curve_of(type, {}, shipped_catalogs().storms); }

double runoff_in(double rain_in, double curve_number) { return runoff_depth_m(rain_in * inch, curve_number) / inch; }

}  // namespace

TEST_CASE("Runoff depth equals the worked examples of TR-55 chapter 2", "[drain]") {
  // TR-55 examples 2-1 to 2-4 (answers from memory, recomputed).
  CHECK(runoff_in(6, 70) == Approx(2.81).margin(0.01));
  CHECK(runoff_in(6, 75) == Approx(3.28).margin(0.01));
  CHECK(runoff_in(6, 77) == Approx(3.48).margin(0.01));
  CHECK(runoff_in(6, 74) == Approx(3.19).margin(0.01));
}

TEST_CASE("Rain under the initial abstraction gives no runoff, and a bare roof of number 100 gives it all", "[drain]") {
  CHECK(runoff_in(0.30, 85) == 0);
  CHECK(runoff_in(0, 98) == 0);
  CHECK(runoff_in(2.5, 100) == Approx(2.5));
}

TEST_CASE("Runoff never exceeds the rain and rises with rain and curve number", "[drain]") {
  std::mt19937 random{20261125};
  std::uniform_real_distribution<double> rain_in{0, 12}, number{30, 100};
  for (int i = 0; i < 2000; ++i) {
    const double p = rain_in(random), cn = number(random);
    REQUIRE(runoff_in(p, cn) <= p);
    REQUIRE(runoff_in(p + 0.1, cn) >= runoff_in(p, cn));
    REQUIRE(runoff_in(p, std::min(100.0, cn + 1)) >= runoff_in(p, cn));
  }
}

TEST_CASE("Composite curve numbers are weighted by area", "[drain]") {
  // TR-55 example 2-2 (inputs read).
  const std::array parts{CoverPart{75, 70}, CoverPart{100, 80}, CoverPart{75, 74}};
  CHECK(composite_curve_number(parts) == Approx(75.2).margin(0.05));
  CHECK(composite_curve_number({}) == 0);
}

TEST_CASE("A rational coefficient is weighted by area", "[drain]") {
  // HEC-22 4th ed., example 4.1 (read).
  const std::array existing{CoverPart{22.1, 0, 0.25}, CoverPart{21.2, 0, 0.22}};
  const std::array proposed{CoverPart{5.4, 0, 0.90}, CoverPart{1.6, 0, 0.15}, CoverPart{18.6, 0, 0.25},
                            CoverPart{17.7, 0, 0.22}};
  CHECK(composite_rational_c(existing) == Approx(0.235).margin(0.001));
  CHECK(composite_rational_c(proposed) == Approx(0.315).margin(0.001));
}

TEST_CASE("Unconnected impervious ground counts by half", "[drain]") {
  // TR-55 figure 2-4 as a formula (computed).
  CHECK(with_impervious(74, 0.25, 0.5) == Approx(78.5).margin(0.1));
  CHECK(with_impervious(74, 0.25) == Approx(80));
  CHECK(with_impervious(74, 0) == 74);
}

TEST_CASE("The travel times of TR-55 example 3-1 add up to its time of concentration", "[drain]") {
  // TR-55 example 3-1: 0.30, 0.24, 0.99, sum 1.53 h (from memory, recomputed). The channel: a 27 ft2, wetted 28.2 ft.
  const double sheet_s = sheet_flow_s(0.24, 100 * ft, 0.01, 3.6 * inch);
  const double shallow_m_per_s = shallow_flow_m_per_s(0.01, false);
  const double shallow_s = 1400 * ft / shallow_m_per_s;
  const double channel_ft_per_s = 1.486 / 0.05 * std::pow(27 / 28.2, 2.0 / 3) * std::sqrt(0.005);
  CHECK(sheet_s / hour == Approx(0.296).margin(0.005));
  CHECK(shallow_m_per_s / ft == Approx(1.613).epsilon(0.01));
  CHECK(shallow_s / hour == Approx(0.241).epsilon(0.01));
  CHECK((sheet_s + shallow_s) / hour + 7300 / channel_ft_per_s / 3600 == Approx(1.53).epsilon(0.01));
}

TEST_CASE("Level ground has a long travel time, not an endless one", "[drain]") {
  CHECK(std::isfinite(sheet_flow_s(0.15, 30, 0, 0.08)));
  CHECK(sheet_flow_s(0.15, 30, 0, 0.08) > sheet_flow_s(0.15, 30, 0.001, 0.08));
  CHECK(shallow_flow_m_per_s(-0.1, true) > 0);
}

TEST_CASE("The graphical peak equals TR-55 example 4-1", "[drain]") {
  // 0.39 mi2, CN 75, Tc 1.53 h, Type II, 6.0 in: 345 cfs with the chart (from memory), 344 with table F-1 (computed).
  const auto peak = graphical_peak(0.39 * square_mile, 75, 6 * inch, 1.53 * hour, StormType::ii);
  REQUIRE(peak.state == PeakState::computed);
  CHECK(peak.peak_m3_per_s / cfs == Approx(345).epsilon(0.01));
  CHECK(peak.abstraction_ratio == Approx(0.111).margin(0.001));
}

TEST_CASE("A small yard peaks higher the sooner its water comes together", "[drain]") {
  // 10 ac, CN 89, 5 in, Type II (computed from table F-1).
  const auto peak_cfs = [](double concentration_h) {
    return graphical_peak(10 * acre, 89, 5 * inch, concentration_h * hour, StormType::ii).peak_m3_per_s / cfs;
  };
  CHECK(peak_cfs(0.1) == Approx(59.5).epsilon(0.01));
  CHECK(peak_cfs(0.25) == Approx(43.1).epsilon(0.01));
  CHECK(peak_cfs(0.5) == Approx(31.2).epsilon(0.01));
  CHECK(peak_cfs(0.01) == peak_cfs(0.1));
}

TEST_CASE("Where the graphical method does not hold its answer is a named state", "[drain]") {
  CHECK(graphical_peak(acre, 60, 0.5 * inch, hour, StormType::ii).state == PeakState::no_runoff);
  CHECK(graphical_peak(acre, 35, 10 * inch, hour, StormType::ii).state == PeakState::curve_number_too_low);
  CHECK(graphical_peak(acre, 80, 5 * inch, 11 * hour, StormType::ii).state == PeakState::concentration_too_long);
  CHECK(graphical_peak(acre, 80, 5 * inch, hour, StormType::own).state == PeakState::no_table);
}

TEST_CASE("Every storm type gives a peak, Type IA the mildest", "[drain]") {
  const auto peak = [](StormType type) { return graphical_peak(acre, 80, 5 * inch, hour, type).peak_m3_per_s; };
  for (const StormType type : {StormType::i, StormType::ii, StormType::iii}) CHECK(peak(type) > peak(StormType::ia));
}

TEST_CASE("The rational peak equals HEC-22 example 4.3", "[drain]") {
  // HEC-22 4th ed., example 4.3 (read), printed with a unit factor of 1.0 in place of 1.00833.
  const auto peak_cfs = [](double c, double in_per_h) {
    return rational_peak_m3_per_s(c, in_per_h * inch / hour, 43.3 * acre) / cfs / 1.00833;
  };
  CHECK(peak_cfs(0.235, 1.9) == Approx(19.3).margin(0.1));
  CHECK(peak_cfs(0.315, 2.3) == Approx(31.4).margin(0.1));
}

TEST_CASE("The storms of the four types have fallen by these parts at these hours", "[drain]") {
  // NRCS TR-20 tables (read second-hand in two listings that agree).
  const auto fallen = [](StormType type, double at_h) { return curve_of(type).fallen_ratio(at_h * hour); };
  const std::vector<std::pair<double, double>> type_ii{
      {6.0, 0.0800}, {11.5, 0.2830}, {12.0, 0.6630}, {12.5, 0.7350}, {18.0, 0.9210}};
  for (const auto& [at_h, ratio] : type_ii) CHECK(fallen(StormType::ii, at_h) == Approx(ratio).margin(0.0005));
  const std::vector<std::pair<double, double>> type_i{
      {4.0, 0.0760}, {8.0, 0.1940}, {10.0, 0.5150}, {12.0, 0.6840}, {18.0, 0.8860}};
  for (const auto& [at_h, ratio] : type_i) CHECK(fallen(StormType::i, at_h) == Approx(ratio).margin(0.0005));
  const std::vector<std::pair<double, double>> type_ia{
      {4.0, 0.1160}, {7.5, 0.3100}, {8.0, 0.4250}, {10.0, 0.5770}, {16.0, 0.8000}};
  for (const auto& [at_h, ratio] : type_ia) CHECK(fallen(StormType::ia, at_h) == Approx(ratio).margin(0.0005));
  const std::vector<std::pair<double, double>> type_iii{
      {6.0, 0.0720}, {11.5, 0.2980}, {12.0, 0.5000}, {12.5, 0.7020}, {18.0, 0.9280}};
  for (const auto& [at_h, ratio] : type_iii) CHECK(fallen(StormType::iii, at_h) == Approx(ratio).margin(0.0005));
  for (const StormType type : every_type) {
    CHECK(fallen(type, -1) == 0);
    CHECK(fallen(type, 25) == 1);
  }
}

TEST_CASE("Every shipped storm names its source and is a table that a yard could give itself", "[drain]") {
  REQUIRE(shipped_catalogs().storms.size() == 4);
  for (const StormCurve& storm : shipped_catalogs().storms) {
    CHECK_FALSE(storm.source.empty());
    const auto read = parse_mass_curve(text_of(storm.curve));
    REQUIRE(read.has_value());
    CHECK(*read == storm.curve);
  }
}

TEST_CASE("The hardest spans of a Type II storm bring these parts of its depth", "[drain]") {
  // NEH 630 ch. 4, figure 4-31: ratios of the nested depths to that of 24 h (read second-hand).
  const std::vector<std::pair<double, double>> ratios{{0.5, 0.380}, {1.0, 0.454}, {2.0, 0.538},
                                                      {3.0, 0.595}, {6.0, 0.707}, {12.0, 0.841}};
  for (const auto& [span_h, ratio] : ratios) {
    const double intensity = greatest_intensity_m_per_s(curve_of(StormType::ii), 1, span_h * hour);
    CHECK(intensity * span_h * hour == Approx(ratio).margin(0.0006));
  }
}

TEST_CASE("The shorter the span, the harder the hardest rain of it, in every storm", "[drain]") {
  for (const StormType type : every_type) {
    double before = 1e9;
    for (double span_h = 0.1; span_h <= 24; span_h += 0.1) {
      const double intensity = greatest_intensity_m_per_s(curve_of(type), 1, span_h * hour);
      CHECK(intensity <= before * (1 + 1e-9));
      before = intensity;
    }
    CHECK(greatest_intensity_m_per_s(curve_of(type), 0.1, 24 * hour) == Approx(0.1 / (24 * hour)));
  }
}

TEST_CASE("Runoff by steps of the Type II storm adds up to the runoff of the day", "[drain]") {
  // 5 in on CN 89, 74, 85, 98: total and largest tenth of an hour (computed).
  struct Case {
    double curve_number, total_in, largest_in;
  };
  for (const Case& known : {Case{89, 3.772, 0.5985}, {74, 2.364, 0.3838}, {85, 3.368, 0.5447}, {98, 4.763, 0.6814}}) {
    const auto excess_m = excess_by_step_m(5 * inch, known.curve_number, curve_of(StormType::ii), 0.1 * hour);
    CHECK(excess_m.size() == 240);
    CHECK(std::accumulate(excess_m.begin(), excess_m.end(), 0.0) / inch == Approx(known.total_in).epsilon(0.005));
    CHECK(*std::ranges::max_element(excess_m) / inch == Approx(known.largest_in).epsilon(0.005));
  }
  const auto excess_m = excess_by_step_m(5 * inch, 89, curve_of(StormType::ii), 0.1 * hour);
  const auto first = std::ranges::find_if(excess_m, [](double depth_m) { return depth_m > 0; });
  CHECK(first - excess_m.begin() == 41);  // CN 89: in the step that ends at 4.2 h
}
