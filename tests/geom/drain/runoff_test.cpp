#include "geom/drain/runoff.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr double ft = 0.3048, inch = 0.0254, acre = 43560 * ft * ft, hour = 3600;
constexpr double cfs = ft * ft * ft;
constexpr double square_mile = 640 * acre;

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

TEST_CASE("The Type II storm has fallen by these parts at these hours", "[drain]") {
  // NRCS Type II mass curve (read second-hand in two listings that agree).
  CHECK(type_ii_fallen_ratio(6 * hour) == Approx(0.0800).margin(0.0005));
  CHECK(type_ii_fallen_ratio(11.5 * hour) == Approx(0.2830).margin(0.0005));
  CHECK(type_ii_fallen_ratio(12 * hour) == Approx(0.6630).margin(0.0005));
  CHECK(type_ii_fallen_ratio(12.5 * hour) == Approx(0.7350).margin(0.0005));
  CHECK(type_ii_fallen_ratio(18 * hour) == Approx(0.9210).margin(0.0005));
  CHECK(type_ii_fallen_ratio(-1) == 0);
  CHECK(type_ii_fallen_ratio(25 * hour) == 1);
}

TEST_CASE("Runoff by steps of the Type II storm adds up to the runoff of the day", "[drain]") {
  // CN 89, 5 in: 3.772 in, the largest tenth of an hour 0.5985 in (computed).
  double largest_in = 0, before_in = 0;
  for (int tenth = 1; tenth <= 240; ++tenth) {
    const double now_in = runoff_in(5 * type_ii_fallen_ratio(tenth * 0.1 * hour), 89);
    largest_in = std::max(largest_in, now_in - before_in);
    before_in = now_in;
  }
  CHECK(before_in == Approx(3.772).epsilon(0.005));
  CHECK(largest_in == Approx(0.5985).epsilon(0.005));
}

TEST_CASE("The hardest half hour of a Type II storm brings 38 percent of its depth", "[drain]") {
  // 0.3800 of the 24-h depth in 0.5 h, 0.4537 in 1 h (computed from the mass curve).
  CHECK(*greatest_intensity_m_per_s(StormType::ii, 1, 0.5 * hour) * 0.5 * hour == Approx(0.3800).margin(0.0001));
  CHECK(*greatest_intensity_m_per_s(StormType::ii, 1, hour) * hour == Approx(0.4537).margin(0.0001));
  CHECK_FALSE(greatest_intensity_m_per_s(StormType::ia, 1, hour));
}
