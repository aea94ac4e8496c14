#include <fmt/format.h>

#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

/// The ridge of a gabled roof, or the hips of a dwelling's.
void add_roof_lines(Marks& marks, const Building& building, const Polygon& box) {
  const Stroke stroke{palette::quiet_ink, 0.13, {}};
  const SiteVector along = direction(building.facing);
  const bool hipped = building.use == BuildingUse::dwelling;
  const double half_m = building.length_m / 2 - (hipped ? std::min(building.width_m / 2, building.length_m / 2) : 0);
  const SitePoint ahead = building.at + along * half_m, behind = building.at - along * half_m;
  marks.push_back(line({behind, ahead}, stroke));
  if (!hipped) return;
  for (const SitePoint corner : box.outer) {
    marks.push_back(line({dot(corner - building.at, along) > 0 ? ahead : behind, corner}, stroke));
  }
}

/// A shell with round ends.
Polygon capsule(const Pose& pose, double length_m, double diameter_m) {
  const SiteVector along = direction(pose.facing);
  const double half_m = std::max(0.0, length_m - diameter_m) / 2;
  Polygon shape;
  for (int i = 0; i <= 24; ++i) {
    const bool ahead = i <= 12;
    const Bearing bearing = pose.facing.turned(Angle::degrees(-90 + (ahead ? i : i - 1) * 180.0 / 12));
    const SitePoint end = pose.at + along * (ahead ? half_m : -half_m);
    shape.outer.push_back(end + direction(bearing) * (diameter_m / 2));
  }
  return shape;
}

constexpr double well_mm = 1.3;

}  // namespace

ItemMarks marks_of(const Building& building, const Scene& scene) {
  ItemMarks marks;
  const Polygon box = rectangle({building.at, building.facing}, building.length_m, building.width_m);
  const bool lived_in = building.use == BuildingUse::dwelling;
  add_polygon(marks.shapes, box, lived_in ? Colour{0xe8, 0xd9, 0xc6} : palette::timber,
              {palette::ink, lived_in ? 0.45 : 0.3, {}});
  add_roof_lines(marks.shapes, building, box);
  const std::string size = fmt::format("{} × {}", short_text_of(building.length_m, Quantity::length, scene.style.units),
                                       short_text_of(building.width_m, Quantity::length, scene.style.units));
  add_label(marks, scene, around(box), Prefer::inside, size);
  return marks;
}

ItemMarks marks_of(const Tank& tank, const Scene& scene) {
  ItemMarks marks;
  const Stroke edge{palette::fuel, 0.35, tank.underground ? std::vector<double>{1, 0.6} : std::vector<double>{}};
  const Polygon shell = capsule({tank.at, tank.facing}, tank.length_m, tank.diameter_m);
  add_polygon(marks.shapes, shell, tank.underground ? palette::none : palette::white, edge);
  const std::string contents = tank.contents == TankContents::ammonia ? "ammonia" : "LP gas";
  add_label(marks, scene, around(shell), Prefer::below,
            contents + " " + short_text_of(tank.water_capacity_m3, Quantity::tank_volume, scene.style.units));
  return marks;
}

ItemMarks marks_of(const Well& well, const Scene& scene) {
  ItemMarks marks;
  marks.shapes.push_back(spot(well.at, well_mm, palette::paper, {palette::water, 0.35, {}}));
  marks.shapes.push_back(spot(well.at, 0.45, palette::water, {palette::none, 0, {}}));
  if (!scene.style.labels) return marks;
  Label label = name_and_size(scene, "");
  label.lines.front().colour = palette::water;
  add_spots_beside(label, well.at, well_mm);
  marks.labels.push_back(std::move(label));
  return marks;
}

ItemMarks marks_of(const OverheadLine& overhead, const Scene& scene) {
  ItemMarks marks;
  marks.shapes.push_back(line(overhead.path, {palette::ink, 0.3, {6, 0.8, 0.8, 0.8}}));
  for (const SitePoint pole : overhead.path) {
    marks.shapes.push_back(spot(pole, 0.9, palette::paper, {palette::ink, 0.35, {}}));
    marks.shapes.push_back(spot(pole, 0.25, palette::ink, {palette::none, 0, {}}));
  }
  const std::string lowest = short_text_of(overhead.lowest_conductor_m, Quantity::length, scene.style.units);
  add_named_along(marks, scene, overhead.path, "lowest wire " + lowest, palette::ink);
  return marks;
}

}  // namespace yardwright::plan
