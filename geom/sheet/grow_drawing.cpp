#include "geom/sheet/grow_drawing.hpp"

#include "geom/grow/prover.hpp"
#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr int ghost_corners = 72;

/// Paths of trucks that cross hundreds of times make slivers that no pen shows.
constexpr double least_drawn_m2 = 0.05;

void add_drawn(Marks& marks, const Region& region, Colour fill, const Stroke& edge) {
  for (const Polygon& polygon : region) {
    if (area_m2(polygon) > least_drawn_m2) add_polygon(marks, polygon, fill, edge);
  }
}

void add_ghost(Marks& marks, const grow::Newcomer& newcomer, SitePoint at) {
  const SitePath outer = as_polygon(footprint(newcomer.at(at)).value_or(Disc{at, 1}), ghost_corners).outer;
  marks.push_back(area(outer, palette::white.faded(0.55)));
  marks.push_back(ring(outer, {palette::pass, 0.4, {1.6, 0.9}}));
}

Label spot_label(const grow::Newcomer& newcomer, const grow::Spot& spot, const PlanStyle& style) {
  Label label;
  label.lines.push_back({short_text_of(spot.margin_m, Quantity::length, style.units) + " to spare", 2.0,
                         spot.free ? palette::pass : palette::caution, true});
  label.halo = palette::white.faded(0.85);
  const Box box = box_of(footprint(newcomer.at(spot.at)).value_or(Disc{spot.at, 1}));
  add_spots_around(label, {spot.at, (box.high.x - box.low.x) / 2, (box.high.y - box.low.y) / 2, true}, Prefer::below,
                   style.metres_per_mm);
  return label;
}

}  // namespace

Drawing allowed_drawing(const grow::AllowedRegion& region) {
  Drawing drawing;
  add_drawn(drawing.marks, without(region.bearable, region.free), palette::caution.faded(0.16),
            {palette::caution.faded(0.6), 0.2, {1.2, 0.8}});
  add_drawn(drawing.marks, region.free, palette::pass.faded(0.22), {palette::pass, 0.35, {}});
  return drawing;
}

Drawing ghosts_drawing(const grow::Newcomer& newcomer, const std::vector<SitePoint>& places) {
  Drawing drawing;
  int number = 0;
  for (const SitePoint& at : places) {
    add_ghost(drawing.marks, newcomer, at);
    drawing.marks.push_back(words(at, std::to_string(++number), 3, palette::pass));
  }
  return drawing;
}

Drawing proposal_drawing(const Site& grown, ItemId first_new) {
  Drawing drawing;
  int number = 0;
  for (const Item& item : grown.items) {
    const auto outline = footprint(item.thing);
    if (item.id < first_new || !outline) continue;
    const SitePath outer = as_polygon(*outline, ghost_corners).outer;
    drawing.marks.push_back(area(outer, palette::white.faded(0.75)));
    drawing.marks.push_back(ring(outer, {palette::pass, 0.5, {1.6, 0.9}}));
    drawing.marks.push_back(words(place_of(item.thing), std::to_string(++number), 3, palette::pass));
  }
  for_each<Spout>(grown, [&](const Item& item, const Spout& spout) {
    const Item *from = find(grown, spout.from), *to = find(grown, spout.to);
    if (item.id < first_new || from == nullptr || to == nullptr) return;
    drawing.marks.push_back(line({place_of(from->thing), place_of(to->thing)}, {palette::pass, 0.35, {1.6, 0.9}}));
  });
  return drawing;
}

PlanParts grow_parts(const Site& site, const Answers& answers, const Catalogs& catalogs, const PlanStyle& style) {
  const Catalogs rules_in_force = grow::in_force(site, catalogs);
  const Thing next = grow::next_bin(site);
  const auto newcomer = grow::newcomer(site, answers, rules_in_force.rules, next, 0);
  const grow::Answer answer = grow::ask(site, answers, rules_in_force, &next, MendSearch{false});
  PlanParts parts;
  if (!newcomer) return parts;
  parts.shapes = allowed_drawing(answer.region).marks;
  for (const grow::Spot& spot : answer.spots) {
    add_ghost(parts.shapes, *newcomer, spot.at);
    parts.labels.push_back(spot_label(*newcomer, spot, style));
  }
  return parts;
}

Drawing keep_off_drawing(const grow::KeepOff& reason) {
  const Colour colour = palette::of(reason.worse);
  Drawing drawing;
  add_drawn(drawing.marks, united(reason.area), colour.faded(0.12), {colour.faded(0.8), 0.25, {1.2, 0.8}});
  return drawing;
}

}  // namespace yardwright
