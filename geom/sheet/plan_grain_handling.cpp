#include <fmt/format.h>

#include <algorithm>

#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::plan {

namespace {

void add_crossed_box(Marks& marks, const Polygon& box, const Stroke& edge) {
  add_polygon(marks, box, palette::white, edge);
  marks.push_back(line({box.outer[0], box.outer[2]}, {edge.colour, edge.width_mm / 2, {}}));
  marks.push_back(line({box.outer[1], box.outer[3]}, {edge.colour, edge.width_mm / 2, {}}));
}

/// The outlets of the distributor, on a ring about the tower.
void add_outlets(Marks& marks, const Leg& leg) {
  const double ring_m = leg.tower_width_m * 1.1;
  marks.push_back(circle(leg.at, ring_m, palette::white.faded(0.7), {palette::reach, 0.2, {}}));
  for (int i = 0; i < leg.outlets; ++i) {
    const SiteVector out = direction(leg.first_outlet.turned(Angle::degrees(i * 360.0 / leg.outlets)));
    marks.push_back(spot(leg.at + out * ring_m, 0.3, palette::reach, {palette::none, 0, {}}));
  }
}

}  // namespace

void add_hole(ItemMarks& marks, const Thing& thing) {
  const auto hole = pit_hole(thing);
  if (!hole) return;
  add_polygon(marks.shapes, *hole, palette::water.faded(0.08), {palette::ink, 0.25, {0.9, 0.6}});
}

ItemMarks marks_of(const Leg& leg, const Scene& scene) {
  ItemMarks marks;
  add_hole(marks, leg);
  if (leg.outlets > 0) add_outlets(marks.shapes, leg);
  add_crossed_box(marks.shapes, rectangle({leg.at, leg.facing}, leg.tower_width_m, leg.tower_width_m),
                  {palette::ink, 0.4, {}});
  const double half_m = std::max({leg.tower_width_m * 1.2, leg.boot.length_m / 2, leg.boot.width_m / 2});
  add_label(marks, scene, {leg.at, half_m, half_m, false}, Prefer::beside,
            short_text_of(leg.discharge_height_m, Quantity::length, scene.style.units) + " discharge");
  return marks;
}

ItemMarks marks_of(const Dryer& dryer, const Scene& scene) {
  ItemMarks marks;
  const Polygon box = rectangle({dryer.at, dryer.facing}, dryer.length_m, dryer.width_m);
  add_polygon(marks.shapes, box, Colour{0xf0, 0xdf, 0xd3}, {palette::fuel, 0.4, {}});
  const SiteVector along = direction(dryer.facing), across = right_of(along);
  for (const double part : {-0.3, -0.1, 0.1, 0.3}) {
    const SitePoint at = dryer.at + along * (dryer.length_m * part);
    const SiteVector half = across * (dryer.width_m * 0.42);
    marks.shapes.push_back(line({at - half, at + half}, {palette::fuel.faded(0.6), 0.18, {}}));
  }
  add_label(marks, scene, around(box), Prefer::below,
            dryer.operation == DryerOperation::batch ? "batch dryer" : "continuous dryer");
  return marks;
}

ItemMarks marks_of(const Receiving& receiving, const Scene& scene) {
  ItemMarks marks;
  const Pose pose{receiving.at, receiving.facing};
  const bool roofed = receiving.type == ReceivingKind::drive_through;
  add_polygon(marks.shapes, rectangle(pose, receiving.length_m, receiving.width_m),
              roofed ? palette::timber : palette::gravel,
              {palette::ink, 0.35, roofed ? std::vector<double>{} : std::vector<double>{2, 1}});
  add_hole(marks, receiving);
  const SiteVector along = direction(receiving.facing), across = right_of(along);
  for (const double end : {-0.5, 0.5}) {
    if (!roofed) break;
    const SitePoint middle = receiving.at + along * (receiving.length_m * end);
    const SiteVector half = across * (receiving.door_width_m / 2);
    marks.shapes.push_back(line({middle - half, middle + half}, {palette::paper, 0.8, {}}));
    marks.shapes.push_back(line({middle - half, middle + half}, {palette::ink, 0.2, {0.8, 0.5}}));
  }
  const std::string doors =
      fmt::format("doors {} × {}", short_text_of(receiving.door_width_m, Quantity::length, scene.style.units),
                  short_text_of(receiving.door_height_m, Quantity::length, scene.style.units));
  add_label(marks, scene, around(rectangle(pose, receiving.length_m, receiving.width_m)), Prefer::below,
            roofed ? doors : "open dump");
  return marks;
}

ItemMarks marks_of(const Conveyor& conveyor, const Scene& scene) {
  ItemMarks marks;
  const bool under_ground = conveyor.start_height_m < 0 && conveyor.end_height_m < 0;
  const Stroke edge{palette::ink, 0.25, under_ground ? std::vector<double>{1.2, 0.8} : std::vector<double>{}};
  const double drawn_width_m = std::max(conveyor.width_m, 0.7 * scene.style.metres_per_mm);
  add_region(marks.shapes, strip_of(conveyor.path, drawn_width_m), under_ground ? palette::none : palette::white, edge);
  add_arrows(marks, conveyor.path, scene, 18, {palette::ink, 0.25, {}});
  if (!scene.item.name.empty()) {
    add_words_along(marks, scene.style, conveyor.path, scene.item.name, palette::quiet_ink);
  }
  return marks;
}

ItemMarks marks_of(const Spout& spout, const Scene& scene) {
  ItemMarks marks;
  const Item* from = find(scene.site, spout.from);
  const Item* to = find(scene.site, spout.to);
  if (from == nullptr || to == nullptr) return marks;
  const SitePoint start = place_of(from->thing), end = place_of(to->thing);
  const bool wet = spout.state == GrainState::wet;
  marks.shapes.push_back(line({start, end}, {palette::paper, 1.0, {}}));
  marks.shapes.push_back(
      line({start, end}, {palette::reach, 0.5, wet ? std::vector<double>{1.8, 0.9} : std::vector<double>{}}));
  marks.shapes.push_back(spot(end, 0.6, palette::reach, {palette::none, 0, {}}));
  return marks;
}

ItemMarks marks_of(const Pit& pit, const Scene& scene) {
  ItemMarks marks;
  add_hole(marks, pit);
  const double half_m = std::max(pit.body.width_m, pit.body.length_m) / 2;
  add_label(marks, scene, {pit.at, half_m, half_m, false}, Prefer::beside,
            short_text_of(pit.body.depth_m, Quantity::length, scene.style.units) + " deep");
  return marks;
}

ItemMarks marks_of(const Tunnel& tunnel, const Scene& scene) {
  ItemMarks marks;
  add_region(marks.shapes, strip_of(tunnel.path, tunnel.width_m), palette::none, {palette::ink, 0.25, {1.2, 0.8}});
  add_named_along(marks, scene, tunnel.path, short_text_of(tunnel.width_m, Quantity::length, scene.style.units),
                  palette::quiet_ink);
  return marks;
}

}  // namespace yardwright::plan
