#include "geom/drain/storm/storm_tables.hpp"

#include <fmt/format.h>

namespace yardwright::drain::storm {

namespace {

/// Quoted, and no formula for a spreadsheet that opens it.
std::string quoted(const Site& site, ItemId id, std::string_view column) {
  const Item* item = find(site, id);
  std::string words = item == nullptr ? fmt::format("item {}", id.number) : title_of(*item);
  if (!words.empty() && std::string_view{"=+-@\t\r"}.find(words.front()) != std::string_view::npos) words = "'" + words;
  std::string safe;
  for (const char letter : words + ": " + std::string{column}) safe += letter == '"' ? "\"\"" : std::string(1, letter);
  return '"' + safe + '"';
}

}  // namespace

std::string hydrographs_csv(const Site& site, const StormStory& story) {
  std::string csv = "time_h,leaving_m3_per_s";
  for (const PitStory& pit : story.pits)
    for (const char* column : {"level_m", "inflow_m3_per_s", "pumped_m3_per_s"})
      csv += ',' + quoted(site, pit.item, column);
  for (const std::vector<PipeStory>* pipes : {&story.culverts, &story.tiles, &story.grates})
    for (const PipeStory& pipe : *pipes) csv += ',' + quoted(site, pipe.item, "flow_m3_per_s");
  csv += "\r\n";
  for (std::size_t i = 0; i < story.times_s.size(); ++i) {
    csv += fmt::format("{:.4f},{:.6f}", story.times_s[i] / 3600, story.leaving_m3_per_s[i]);
    for (const PitStory& pit : story.pits) {
      const PitSample& sample = pit.samples[i];
      csv += fmt::format(",{:.4f},{:.6f},{:.6f}", sample.level_m, sample.inflow_m3_per_s, sample.pumped_m3_per_s);
    }
    for (const std::vector<PipeStory>* pipes : {&story.culverts, &story.tiles, &story.grates})
      for (const PipeStory& pipe : *pipes) csv += fmt::format(",{:.6f}", pipe.flow_m3_per_s[i]);
    csv += "\r\n";
  }
  return csv;
}

}  // namespace yardwright::drain::storm
