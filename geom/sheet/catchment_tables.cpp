#include "geom/sheet/catchment_tables.hpp"

#include <fmt/format.h>

#include "geom/drain/catchment_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

std::string name_in(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item == nullptr ? fmt::format("item {}", id.number) : title_of(*item);
}

void add_travel(Table& table, const Site& site, ItemId item, const drain::Concentration& concentration) {
  const auto text = [&](double si, Quantity quantity) { return text_of(si, quantity, site.units); };
  bool first = true;
  for (const drain::TravelSegment& segment : concentration.segments) {
    table.rows.push_back({{first ? name_in(site, item) : "", true},
                          {std::string{names_of(segment.travel)[static_cast<std::size_t>(segment.travel)]}},
                          {text(segment.length_m, Quantity::length)},
                          {text(segment.slope_ratio, Quantity::grade)},
                          {drain::ground_words(segment, site.units)},
                          {text(segment.speed_m_per_s, Quantity::speed)},
                          {drain::travel_hours_words(segment.time_s)},
                          {drain::place_words(segment.begins, site.units)},
                          {drain::place_words(segment.ends, site.units)}});
    first = false;
  }
  if (concentration.segments.size() > 1)
    table.rows.push_back(
        {{""}, {"in all", true}, {""}, {""}, {""}, {""}, {drain::travel_hours_words(concentration.total_s()), true}});
}

void add_covers(Table& table, const Site& site, ItemId item, const std::vector<drain::CoverPart>& parts) {
  const auto row = [&](std::string name, std::string cover, std::string soil, double area_m2, std::string number) {
    table.rows.push_back({{std::move(name), true},
                          {std::move(cover)},
                          {std::move(soil)},
                          {drain::area_words(area_m2, site.units)},
                          {std::move(number)}});
  };
  double sum_m2 = 0;
  for (const drain::CoverPart& part : parts) {
    row(sum_m2 > 0 ? "" : name_in(site, item), part.cover, drain::soil_words(part.soil), part.area_m2,
        fmt::format("{:g}", part.curve_number));
    sum_m2 += part.area_m2;
  }
  if (parts.size() > 1)
    row("", "in all, weighted by area", "", sum_m2, fmt::format("{:.1f}", drain::composite_curve_number(parts)));
}

}  // namespace

Table travel_table(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes) {
  Table table{"Drainage: the farthest water of each catchment",
              "By TR-55, each segment on its own slope; a slope under 0.05 % counts as that. Places from the site's "
              "origin.",
              {},
              {}};
  table.columns = {{"catchment of", 2},           {"flow", 1},   {"length", 1, Anchor::right},
                   {"slope", 0.9, Anchor::right}, {"over", 3.2}, {"speed", 1.1, Anchor::right},
                   {"time", 1, Anchor::right},    {"from", 2.5}, {"to", 2.5}};
  for (const drain::PitWater& pit : answer.pits) add_travel(table, site, pit.item, pit.concentration);
  for (const drain::PipeCatchment& pipe : pipes) add_travel(table, site, pipe.item, pipe.water.concentration);
  return table;
}

Table cover_table(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes) {
  Table table{"Drainage: what makes each curve number", "NRCS curve numbers by cover and soil group.", {}, {}};
  table.columns = {{"catchment of", 2.2},
                   {"cover", 3},
                   {"soil group", 1, Anchor::middle},
                   {"area", 1.6, Anchor::right},
                   {"CN", 1, Anchor::right}};
  for (const drain::PitWater& pit : answer.pits) add_covers(table, site, pit.item, pit.covers);
  for (const drain::PipeCatchment& pipe : pipes) add_covers(table, site, pipe.item, pipe.water.covers);
  return table;
}

}  // namespace yardwright
