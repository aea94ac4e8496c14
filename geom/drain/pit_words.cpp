#include "geom/drain/pit_words.hpp"

#include <fmt/format.h>

#include "geom/units/text.hpp"

namespace yardwright::drain {

std::string hours_words(double time_s) { return fmt::format("{:.1f} h", time_s / 3600); }

std::vector<std::string> runoff_words(const PitWater& water, UnitSystem units) {
  const auto flow = [&](double m3_per_s) { return text_of(m3_per_s, Quantity::flow, units); };
  std::vector<std::string> lines{"runoff " + text_of(water.runoff_m3, Quantity::volume, units)};
  std::string peaks;
  if (water.peak.state == PeakState::computed) peaks = flow(water.peak.peak_m3_per_s) + " graphical";
  if (water.rational_peak_m3_per_s)
    peaks += (peaks.empty() ? "" : ", ") + flow(*water.rational_peak_m3_per_s) + " rational";
  if (!peaks.empty()) lines.push_back("peak " + peaks);
  if (water.routed_peak) {
    lines.push_back(fmt::format("{} at {} by unit hydrograph", flow(water.routed_peak->flow_m3_per_s),
                                hours_words(water.routed_peak->at_s)));
  }
  return lines;
}

}  // namespace yardwright::drain
