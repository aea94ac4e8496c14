#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

constexpr double curve_step_m = 0.5;

Colour surface_colour(DriveSurface surface) {
  switch (surface) {
    case DriveSurface::paved: return palette::paved;
    case DriveSurface::dirt: return palette::dirt;
    case DriveSurface::gravel: break;
  }
  return palette::gravel;
}

}  // namespace

ItemMarks marks_of(const Drive& drive, const Scene& scene) {
  ItemMarks marks;
  const SitePath middle = with_fillets(drive.path, drive.corner_radius_m, curve_step_m);
  add_region(marks.shapes, strip_of(middle, drive.width_m), surface_colour(drive.surface),
             {palette::earth.faded(0.5), 0.15, {}});
  if (drive.is_graded()) {
    const std::string grade = short_text_of(drive.greatest_grade_ratio, Quantity::grade, scene.style.units);
    add_named_along(marks, scene, middle, "graded to " + grade, palette::earth);
  } else if (!scene.item.name.empty()) {
    add_words_along(marks, scene.style, middle, scene.item.name, palette::earth);
  }
  return marks;
}

ItemMarks marks_of(const Route& route, const Scene& scene) {
  ItemMarks marks;
  if (route.path.empty()) return marks;
  const SitePath driven = with_fillets(route.path, route.corner_radius_m, curve_step_m);
  const Stroke stroke{palette::quiet_ink, 0.3, {2.4, 1.2}};
  marks.shapes.push_back(line(driven, stroke));
  add_arrows(marks, driven, scene, 30, {palette::quiet_ink, 0.3, {}});
  marks.shapes.push_back(spot(driven.front(), 0.8, palette::paper, {palette::quiet_ink, 0.3, {}}));
  return marks;
}

ItemMarks marks_of(const Gate& gate, const Scene& scene) {
  ItemMarks marks;
  const SiteVector half = right_of(direction(gate.facing)) * (gate.width_m / 2);
  const SiteVector swung = direction(gate.facing) * (gate.width_m * 0.22);
  const Stroke leaf{palette::ink, 0.35, {}};
  marks.shapes.push_back(line({gate.at - half, gate.at - half * 0.55 + swung}, leaf));
  marks.shapes.push_back(line({gate.at + half, gate.at + half * 0.55 + swung}, leaf));
  marks.shapes.push_back(line({gate.at - half, gate.at + half}, {palette::ink, 0.15, {0.6, 0.6}}));
  for (const SitePoint post : {gate.at - half, gate.at + half}) {
    marks.shapes.push_back(spot(post, 0.6, palette::ink, {palette::none, 0, {}}));
  }
  add_label(marks, scene, around(rectangle({gate.at, gate.facing}, gate.width_m * 0.2, gate.width_m)), Prefer::below,
            short_text_of(gate.width_m, Quantity::length, scene.style.units) + " clear");
  return marks;
}

ItemMarks marks_of(const Scale& scale, const Scene& scene) {
  ItemMarks marks;
  const Pose pose{scale.at, scale.facing};
  add_polygon(marks.shapes, rectangle(pose, scale.length_m, scale.width_m), palette::white.faded(0.8),
              {palette::ink, 0.3, {}});
  const SiteVector along = direction(scale.facing), across = right_of(along) * (scale.width_m / 2);
  for (int i = -3; i <= 3; ++i) {
    const SitePoint at = scale.at + along * (scale.length_m * i / 8.0);
    marks.shapes.push_back(line({at - across, at + across}, {palette::faint_ink, 0.12, {}}));
  }
  add_label(marks, scene, around(rectangle(pose, scale.length_m, scale.width_m)), Prefer::below,
            short_text_of(scale.length_m, Quantity::length, scene.style.units));
  return marks;
}

}  // namespace yardwright::plan
