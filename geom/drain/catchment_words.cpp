#include "geom/drain/catchment_words.hpp"

#include <fmt/format.h>

#include "geom/units/text.hpp"

namespace yardwright::drain {

namespace {

std::string channel_words(const DrawnChannel& channel, UnitSystem units) {
  const auto length = [&](double m) { return text_of(m, Quantity::length, units); };
  return fmt::format("{} wide at its bottom, sides {}, {} deep with its banks full, n {:g}",
                     length(channel.bottom_width_m), text_of(channel.side_slope_ratio, Quantity::side_slope, units),
                     length(channel.full_depth_m), channel.roughness_n);
}

std::string_view flow_words(Travel travel) {
  switch (travel) {
    case Travel::sheet: return "sheet flow";
    case Travel::shallow: return "shallow flow";
    case Travel::channel: break;
  }
  return "channel";
}

std::string segment_words(const TravelSegment& segment, UnitSystem units) {
  return fmt::format("{} {} at {}, {}: {}, {}", flow_words(segment.travel),
                     text_of(segment.length_m, Quantity::length, units),
                     text_of(segment.slope_ratio, Quantity::grade, units), ground_words(segment, units),
                     text_of(segment.speed_m_per_s, Quantity::speed, units), travel_hours_words(segment.time_s));
}

}  // namespace

std::string ground_words(const TravelSegment& segment, UnitSystem units) {
  switch (segment.travel) {
    case Travel::sheet:
      return fmt::format("n {:g}, two-year rain {}", segment.sheet_n,
                         text_of(segment.two_year_rain_m, Quantity::rain_depth, units));
    case Travel::shallow: return segment.paved ? "paved" : "unpaved";
    case Travel::channel: break;
  }
  return channel_words(segment.channel, units);
}

std::string travel_hours_words(double time_s) { return fmt::format("{:.3f} h", time_s / 3600); }

std::string place_words(SitePoint place, UnitSystem units) {
  return fmt::format("{} east, {} north", text_of(place.x, Quantity::length, units),
                     text_of(place.y, Quantity::length, units));
}

std::vector<std::string> concentration_words(const Concentration& concentration, UnitSystem units) {
  const auto& segments = concentration.segments;
  if (segments.empty()) return {};
  std::vector<std::string> lines{
      fmt::format("its farthest water takes {}, from {} to {}", travel_hours_words(concentration.total_s()),
                  place_words(segments.front().begins, units), place_words(segments.back().ends, units))};
  for (const TravelSegment& segment : segments) lines.push_back(segment_words(segment, units));
  return lines;
}

std::string area_words(double area_m2, UnitSystem units) {
  constexpr double small_m2 = 2000;
  if (area_m2 >= small_m2) return text_of(area_m2, Quantity::area, units);
  return text_in(area_m2, *unit_typed(units == UnitSystem::us ? "ft2" : "m2", Quantity::area));
}

std::string soil_words(SoilGroup soil) {
  constexpr std::string_view groups = "ABCD";
  return std::string{groups[static_cast<std::size_t>(soil)]};
}

std::string curve_number_words(std::span<const CoverPart> parts, UnitSystem units) {
  std::string words = fmt::format("curve number {:.1f}:", composite_curve_number(parts));
  for (const CoverPart& part : parts)
    words += fmt::format("{} {} {}, soil {}, {:g}", &part == parts.data() ? "" : ";", area_words(part.area_m2, units),
                         part.cover, soil_words(part.soil), part.curve_number);
  return words;
}

}  // namespace yardwright::drain
