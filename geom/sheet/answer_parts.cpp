#include "geom/sheet/answer_parts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/drain/pit_words.hpp"
#include "geom/sheet/answer_drawing.hpp"
#include "geom/sheet/drain_plan.hpp"
#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/site/footprint.hpp"
#include "geom/site/item_verdict.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr double over_pair = 5;  ///< what words across the line of a pair cost
constexpr double least_named_pond_mm = 14;
constexpr double worth_a_number_m = 3;  ///< what a vehicle passes at more than this needs no figure

Label one_line(std::string text, Colour colour, bool bold = false) {
  Label label;
  label.lines.push_back({std::move(text), 2.0, colour, bold});
  label.halo = palette::white.faded(0.85);
  return label;
}

Colour colour_of(Verdict verdict, Colour passes) { return verdict == Verdict::pass ? passes : palette::of(verdict); }

/// "9.1 ft < 10 ft", "26.4 ft ≥ 10 ft"; the distance alone where none is asked for.
std::string pair_words(const clear::NearPlace& near, UnitSystem units) {
  const std::string measured = short_text_of(distance(near.pair.a, near.pair.b), Quantity::length, units);
  if (near.required_m <= 0) return measured;
  return fmt::format("{} {} {}", measured, near.verdict == Verdict::pass ? "≥" : "<",
                     short_text_of(near.required_m, Quantity::length, units));
}

/// A dimension between two points, its number along it.
void add_pair(PlanParts& parts, SitePoint from, SitePoint to, const std::string& text, Colour colour,
              const PlanStyle& style, double line_mm = 0.3) {
  const SiteVector along = to - from;
  if (length(along) <= 0) return;
  parts.shapes.push_back(line({from, to}, {colour, line_mm, {}}));
  for (const SitePoint end : {from, to}) parts.shapes.push_back(slanted_tick(end, along, 1.6, {colour, 0.4, {}}));
  parts.obstacles.push_back({SitePath{from, to}, over_pair, false, 0, {}});
  Label label = one_line(text, colour, true);
  const SitePoint middle = between(from, to, 0.5);
  if (length(along) / style.metres_per_mm > size_of(label).width_mm * 1.2)
    add_spots_along(label, {from, to}, {.places = 5}, style.metres_per_mm);
  else
    add_spots_beside(label, middle, 0.6);
  parts.labels.push_back(std::move(label));
}

void add_ring(PlanParts& parts, const reach::ReachRing& reach_ring, const PlanStyle& style) {
  if (reach_ring.ring.size() < 3) return;
  parts.shapes.push_back(ring(reach_ring.ring, {palette::reach.faded(0.7), 0.25, {1.6, 1.1}}));
  SitePath around = reach_ring.ring;
  around.push_back(around.front());
  Label words = one_line(
      fmt::format("{} bins are reached inside", short_text_of(reach_ring.diameter_m, Quantity::length, style.units)),
      palette::reach);
  add_spots_along(words, around, {.set_in = true, .places = 24}, style.metres_per_mm);
  parts.labels.push_back(std::move(words));
}

bool same_size(const reach::ReachRing& a, const reach::ReachRing& b) {
  return a.leg == b.leg && a.diameter_m == b.diameter_m && a.eave_height_m == b.eave_height_m;
}

void add_spout(PlanParts& parts, const reach::CheckedSpout& spout, Verdict verdict, const PlanStyle& style) {
  const Colour colour = colour_of(verdict, palette::reach);
  const SitePath path{spout.line.from, spout.line.to};
  parts.shapes.push_back(line(path, {palette::paper, 1.1, {}}));
  parts.shapes.push_back(
      line(path, {colour, 0.6, verdict == Verdict::fail ? std::vector{1.8, 1.1} : std::vector<double>{}}));
  Label words = one_line(fmt::format("{} · {}", text_of(spout.line.slope().as_degrees(), Quantity::angle, style.units),
                                     short_text_of(spout.line.length_m(), Quantity::length, style.units)),
                         colour, true);
  add_spots_along(words, path, {.places = 11}, style.metres_per_mm);
  if (!words.spots.empty()) parts.labels.push_back(std::move(words));
}

void add_near_places(PlanParts& parts, const turn::DrivenRoute& route, const PlanStyle& style) {
  for (const turn::ItemClearance& near : route.clearances) {
    const turn::Clearance& gap = near.clearance;
    if (gap.distance_m > worth_a_number_m || gap.distance_m <= 0) continue;
    add_pair(parts, gap.on_vehicle, gap.on_obstacle, short_text_of(gap.distance_m, Quantity::length, style.units),
             palette::water, style);
  }
}

void add_pond_words(PlanParts& parts, const drain::Pond& pond, const PlanStyle& style) {
  if (pond.rings.empty()) return;
  const Box box = box_of(pond.rings.front());
  if (distance(box.low, box.high) < least_named_pond_mm * style.metres_per_mm) return;
  Label words =
      one_line(fmt::format("full {} deep, {}", short_text_of(pond.hollow.depth_m, Quantity::length, style.units),
                           short_text_of(pond.hollow.volume_m3, Quantity::volume, style.units)),
               palette::water, true);
  words.lines.push_back({"spills at " + short_text_of(pond.hollow.spill_level_m, Quantity::length, style.units), 1.8,
                         palette::water, false});
  add_spots_within(words, {pond.rings.front(), {}}, style.metres_per_mm);
  parts.labels.push_back(std::move(words));
}

void add_pit_words(PlanParts& parts, const drain::PitWater& pit, const Site& site, const PlanStyle& style) {
  const Item* item = find(site, pit.item);
  Label words = one_line(fmt::format("{} gets the rain of {}", item ? title_of(*item) : "the pit",
                                     short_text_of(pit.catchment_m2, Quantity::area, style.units)),
                         palette::water);
  for (std::string& line : drain::runoff_words(pit, style.units))
    words.lines.push_back({std::move(line), 1.8, palette::water, false});
  add_spots_beside(words, pit.at, 3);
  parts.labels.push_back(std::move(words));
}

}  // namespace

PlanParts reach_parts(const reach::Answer& answer, const PlanStyle& style) {
  PlanParts parts;
  for (auto ring = answer.rings.begin(); ring != answer.rings.end(); ++ring) {
    const bool repeated = std::any_of(answer.rings.begin(), ring,
                                      [&](const reach::ReachRing& before) { return same_size(before, *ring); });
    if (!repeated) add_ring(parts, *ring, style);
  }
  for (const reach::CheckedSpout& spout : answer.spouts)
    add_spout(parts, spout, verdict_on(answer.findings, spout.spout), style);
  return parts;
}

PlanParts turn_parts(const turn::Answer& answer, const PlanStyle& style) {
  PlanParts parts;
  for (const turn::DrivenRoute& route : answer.routes)
    add_region(parts.shapes, route.swept, palette::water.faded(0.12), {palette::none, 0, {}});
  for (Mark& mark : turn_drawing(answer).marks) parts.shapes.push_back(std::move(mark));
  for (const turn::DrivenRoute& route : answer.routes) add_near_places(parts, route, style);
  return parts;
}

PlanParts drain_parts(const drain::Answer& answer, const DesignSurface& surface, const Site& site,
                      const PlanStyle& style, const std::vector<Obstacle>& keep_off) {
  std::vector<Obstacle> obstacles = plan::obstacles_of(site);
  obstacles.insert(obstacles.end(), keep_off.begin(), keep_off.end());
  const double interval_m = drainage_interval_m(surface, style);
  PlanParts parts = design_contour_parts(surface, interval_m, style);
  add(parts,
      drain_shape_parts(drain_shape(answer, surface, interval_m), answer, surface, site, style, std::move(obstacles)));
  for (const drain::Pond& pond : answer.ponds) add_pond_words(parts, pond, style);
  for (const drain::PitWater& pit : answer.pits) add_pit_words(parts, pit, site, style);
  return parts;
}

PlanParts clear_parts(const clear::Answer& answer, const PlanStyle& style) {
  PlanParts parts;
  for (const clear::LineStrip& strip : answer.strips) {
    add_region(parts.shapes, strip.keep_clear, palette::caution.faded(0.10),
               {palette::caution.faded(0.7), 0.2, {1.2, 0.8}});
  }
  for (const clear::NearPlace& near : answer.near) {
    const bool kept = near.verdict == Verdict::pass;
    add_pair(parts, near.pair.a, near.pair.b, pair_words(near, style.units), palette::of(near.verdict), style,
             kept ? 0.15 : 0.35);
  }
  return parts;
}

PlanParts pace_parts(const pace::Answer& answer, const Site& site, const PlanStyle& style) {
  PlanParts parts;
  for (const pace::BinReport& report : answer.bins) {
    const Item* item = find(site, report.bin);
    if (item == nullptr) continue;
    const auto words = [&](GrainVolume volume) { return short_volume_text(volume.as_cubic_metres(), style.units); };
    Label label = one_line(fmt::format("flows {}", words(report.volume.flows)), palette::pass);
    label.lines.push_back({fmt::format("stays {}", words(report.volume.stays)), 2.0, palette::caution, false});
    label.owner = report.bin;
    const Box box = box_of(footprint(item->thing).value_or(Disc{place_of(item->thing), 1}));
    add_spots_around(label, {place_of(item->thing), (box.high.x - box.low.x) / 2, (box.high.y - box.low.y) / 2, true},
                     Prefer::inside, style.metres_per_mm);
    parts.labels.push_back(std::move(label));
  }
  return parts;
}

PlanParts answer_parts(Question question, const Answers& answers, const Site& site, const PlanStyle& style,
                       const std::vector<Obstacle>& keep_off) {
  switch (question) {
    case Question::reach: return reach_parts(*answers.reach, style);
    case Question::turn: return turn_parts(*answers.turn, style);
    case Question::drain: return drain_parts(*answers.drain, answers.surface, site, style, keep_off);
    case Question::clear: return clear_parts(*answers.clear, style);
    case Question::pace: return pace_parts(*answers.pace, site, style);
    case Question::grow: break;
  }
  return {};
}

}  // namespace yardwright
