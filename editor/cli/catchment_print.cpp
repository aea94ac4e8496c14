#include "editor/cli/catchment_print.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "geom/drain/catchment_words.hpp"
#include "geom/drain/pit_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

std::string name_of(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item ? title_of(*item) : fmt::format("item {}", id.number);
}

void print_ground(const std::vector<drain::CoverPart>& covers, const drain::Concentration& concentration,
                  UnitSystem units) {
  fmt::print("  {:<13} {}\n", "", drain::curve_number_words(covers, units));
  bool first = true;
  for (const std::string& line : drain::concentration_words(concentration, units)) {
    fmt::print("  {:<13} {}{}\n", "", first ? "" : "  ", line);
    first = false;
  }
}

Json place_as_json(SitePoint place) { return Json::array({place.x, place.y}); }

Json covers_as_json(const std::vector<drain::CoverPart>& covers) {
  Json out = Json::array();
  for (const drain::CoverPart& part : covers)
    out.push_back({{"cover", part.cover},
                   {"soil", names_of(part.soil)[static_cast<std::size_t>(part.soil)]},
                   {"area_m2", part.area_m2},
                   {"curve_number", part.curve_number}});
  return out;
}

Json as_json(const drain::TravelSegment& segment) {
  Json out{{"flow", names_of(segment.travel)[static_cast<std::size_t>(segment.travel)]},
           {"length_m", segment.length_m},
           {"slope_ratio", segment.slope_ratio},
           {"speed_m_per_s", segment.speed_m_per_s},
           {"time_s", segment.time_s},
           {"from_m", place_as_json(segment.begins)},
           {"to_m", place_as_json(segment.ends)}};
  switch (segment.travel) {
    case drain::Travel::sheet:
      out["n"] = segment.sheet_n;
      out["two_year_rain_m"] = segment.two_year_rain_m;
      break;
    case drain::Travel::shallow: out["paved"] = segment.paved; break;
    case drain::Travel::channel:
      out["n"] = segment.channel.roughness_n;
      out["bottom_width_m"] = segment.channel.bottom_width_m;
      out["side_slope_ratio"] = segment.channel.side_slope_ratio;
      out["depth_m"] = segment.channel.full_depth_m;
      break;
  }
  return out;
}

Json segments_as_json(const drain::Concentration& concentration) {
  Json out = Json::array();
  for (const drain::TravelSegment& segment : concentration.segments) out.push_back(as_json(segment));
  return out;
}

}  // namespace

void print_catchments(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes) {
  const auto area = [&](double m2) { return drain::area_words(m2, site.units); };
  for (const drain::PitWater& pit : answer.pits) {
    fmt::print("  {:<11} {} gets the rain of {}: {}\n", "water", name_of(site, pit.item), area(pit.catchment_m2),
               fmt::join(drain::runoff_words(pit, site.units), "; "));
    print_ground(pit.covers, pit.concentration, site.units);
  }
  for (const drain::PipeCatchment& pipe : pipes) {
    fmt::print("  {:<11} {} takes the rain of {}\n", "water", name_of(site, pipe.item), area(pipe.water.area_m2));
    print_ground(pipe.water.covers, pipe.water.concentration, site.units);
  }
}

Json pits_as_json(const drain::Answer& answer) {
  Json pits = Json::array();
  for (const drain::PitWater& pit : answer.pits) {
    Json out{{"item", pit.item.number},           {"catchment_m2", pit.catchment_m2},
             {"curve_number", pit.curve_number},  {"concentration_s", pit.concentration.total_s()},
             {"runoff_m3", pit.runoff_m3},        {"graphical_peak_m3_per_s", nullptr},
             {"rational_peak_m3_per_s", nullptr}, {"hydrograph_peak_m3_per_s", nullptr},
             {"hydrograph_peak_at_s", nullptr}};
    if (pit.peak.state == drain::PeakState::computed) out["graphical_peak_m3_per_s"] = pit.peak.peak_m3_per_s;
    if (pit.rational_peak_m3_per_s) out["rational_peak_m3_per_s"] = *pit.rational_peak_m3_per_s;
    if (pit.routed_peak) out["hydrograph_peak_m3_per_s"] = pit.routed_peak->flow_m3_per_s;
    if (pit.routed_peak) out["hydrograph_peak_at_s"] = pit.routed_peak->at_s;
    out["covers"] = covers_as_json(pit.covers);
    out["segments"] = segments_as_json(pit.concentration);
    pits.push_back(std::move(out));
  }
  return pits;
}

Json pipes_as_json(const std::vector<drain::PipeCatchment>& pipes) {
  Json out = Json::array();
  for (const drain::PipeCatchment& pipe : pipes)
    out.push_back({{"item", pipe.item.number},
                   {"catchment_m2", pipe.water.area_m2},
                   {"curve_number", pipe.water.curve_number},
                   {"concentration_s", pipe.water.concentration.total_s()},
                   {"covers", covers_as_json(pipe.water.covers)},
                   {"segments", segments_as_json(pipe.water.concentration)}});
  return out;
}

}  // namespace yardwright::cli
