#include "geom/drain/storm/water_here.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geom/drain/storm/storm_words.hpp"
#include "geom/units/bearing.hpp"
#include "geom/units/text.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr double film_m = 0.005;           ///< less is wet ground
constexpr double standing_m_per_s = 0.01;  ///< slower has no direction that means anything

SiteVector velocity_of(const StormFrame& frame, std::size_t cell) {
  return {frame.east_mm_per_s[cell] / 1000.0, frame.north_mm_per_s[cell] / 1000.0};
}

double speed_of(SiteVector velocity) { return std::hypot(velocity.x, velocity.y); }

bool is_wet(const StormFrame& frame, std::size_t cell) { return frame.depth_mm[cell] >= film_m * 1000; }

void take_fastest(WaterHere& water, const StormStory& story, std::size_t cell) {
  for (const StormFrame& frame : story.frames) {
    const double speed_m_per_s = is_wet(frame, cell) ? speed_of(velocity_of(frame, cell)) : 0;
    if (speed_m_per_s <= water.fastest_m_per_s) continue;
    water.fastest_m_per_s = speed_m_per_s;
    water.fastest_at_s = frame.time_s;
  }
}

std::string running_words(const WaterHere& water, UnitSystem units) {
  const double speed_m_per_s = speed_of(water.velocity_m_per_s);
  if (speed_m_per_s < standing_m_per_s) return "it stands";
  return fmt::format("it runs {} at {}", compass_point(Bearing::of(water.velocity_m_per_s.x, water.velocity_m_per_s.y)),
                     text_of(speed_m_per_s, Quantity::speed, units));
}

std::string most_words(const WaterHere& water, UnitSystem units) {
  std::string words = "in this storm at most " + text_of(water.deepest_m, Quantity::small_length, units) + " deep";
  if (water.fastest_m_per_s >= standing_m_per_s)
    words += fmt::format(" and {} fast, at {}", text_of(water.fastest_m_per_s, Quantity::speed, units),
                         hour_words(water.fastest_at_s));
  return words;
}

}  // namespace

std::size_t frame_at(const StormStory& story, double time_s) {
  const auto nearest = std::ranges::min_element(
      story.frames, {}, [&](const StormFrame& frame) { return std::abs(frame.time_s - time_s); });
  return static_cast<std::size_t>(nearest - story.frames.begin());
}

std::optional<WaterHere> water_here(const StormStory& story, double time_s, SitePoint place) {
  const GridFrame& ground = story.deepest_m.frame();
  const CellIndex index = ground.cell_of(place);
  if (story.frames.empty() || !ground.contains(index)) return std::nullopt;
  const std::size_t cell = ground.offset(index);
  const StormFrame& frame = story.frames[frame_at(story, time_s)];
  WaterHere water;
  water.time_s = frame.time_s;
  water.depth_m = frame.depth_mm[cell] / 1000.0;
  if (is_wet(frame, cell)) water.velocity_m_per_s = velocity_of(frame, cell);
  water.deepest_m = static_cast<double>(story.deepest_m.at(index));
  take_fastest(water, story, cell);
  return water;
}

std::vector<std::string> water_words(const WaterHere& water, UnitSystem units) {
  if (water.depth_m < film_m)
    return {"Dry, or wet ground alone, at " + hour_words(water.time_s), most_words(water, units)};
  return {
      fmt::format("{} of water at {}", text_of(water.depth_m, Quantity::small_length, units), hour_words(water.time_s)),
      running_words(water, units), most_words(water, units)};
}

}  // namespace yardwright::drain::storm
