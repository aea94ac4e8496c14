#include "geom/drain/storm/storm_curves.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/site/footprint.hpp"

namespace yardwright::drain::storm {

namespace {

std::string name_of(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item == nullptr ? fmt::format("item {}, which is gone", id.number) : title_of(*item);
}

template <class ValueOf>
std::vector<double> values_of(const PitStory& pit, ValueOf value_of) {
  std::vector<double> values;
  for (const PitSample& sample : pit.samples) values.push_back(value_of(sample));
  return values;
}

std::vector<StormCurve> depths(const Site& site, const StormStory& story) {
  std::vector<StormCurve> curves;
  for (const PitStory& pit : story.pits) {
    const auto depth_m = [&](const PitSample& sample) { return std::max(0.0, sample.level_m - pit.floor_m); };
    curves.push_back({name_of(site, pit.item), values_of(pit, depth_m), pit.rim_m - pit.floor_m});
  }
  return curves;
}

/// Pumps that never ran have no curve.
std::vector<StormCurve> pit_flows(const Site& site, const StormStory& story) {
  std::vector<StormCurve> curves;
  for (const PitStory& pit : story.pits) {
    const std::string name = name_of(site, pit.item);
    curves.push_back({"into " + name, values_of(pit, [](const PitSample& at) { return at.inflow_m3_per_s; }), {}});
    if (pit.pumped_m3 > 0)
      curves.push_back({"pump of " + name, values_of(pit, [](const PitSample& at) { return at.pumped_m3_per_s; }), {}});
  }
  return curves;
}

std::vector<StormCurve> pipe_flows(const Site& site, const StormStory& story) {
  std::vector<StormCurve> curves;
  for (const std::vector<PipeStory>* pipes : {&story.culverts, &story.tiles, &story.grates}) {
    for (const PipeStory& pipe : *pipes) curves.push_back({name_of(site, pipe.item), pipe.flow_m3_per_s, {}});
  }
  return curves;
}

}  // namespace

double StormCurve::most() const { return values.empty() ? 0 : *std::ranges::max_element(values); }

std::vector<StormCurve> storm_curves(const Site& site, const StormStory& story, CurvesOf what) {
  switch (what) {
    case CurvesOf::pit_flows: return pit_flows(site, story);
    case CurvesOf::pipe_flows: return pipe_flows(site, story);
    case CurvesOf::leaving: return {{"off the ground", story.leaving_m3_per_s, {}}};
    case CurvesOf::pit_depths: break;
  }
  return depths(site, story);
}

Quantity quantity_of(CurvesOf what) { return what == CurvesOf::pit_depths ? Quantity::length : Quantity::flow; }

}  // namespace yardwright::drain::storm
