#include <fmt/format.h>

#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::plan {

namespace {

const Stroke grate{palette::water, 0.18, {}};

/// Bars across a grate along a path, about as far apart as they can still be told.
void add_bars(Marks& marks, const SitePath& path, double width_m, double spacing_m) {
  for (double station_m = spacing_m / 2; station_m < length(path); station_m += spacing_m) {
    const Pose pose = pose_at(path, station_m);
    const SiteVector out = right_of(direction(pose.facing)) * (width_m / 2);
    marks.push_back(line({pose.at - out, pose.at + out}, grate));
  }
}

/// As wide as it is, or as wide as can be seen.
double seen_width_m(double width_m, const Scene& scene) { return std::max(width_m, 0.7 * scene.style.metres_per_mm); }

}  // namespace

ItemMarks marks_of(const RetainingWall& wall, const Scene& scene) {
  ItemMarks marks;
  add_region(marks.shapes, strip_of(wall.path, seen_width_m(wall.thickness_m, scene)), palette::paved,
             {palette::ink, 0.25, {}});
  add_named_along(marks, scene, wall.path, size_words(wall, scene.style.units), palette::ink);
  return marks;
}

ItemMarks marks_of(const Curb& curb, const Scene& scene) {
  ItemMarks marks;
  marks.shapes.push_back(line(curb.path, {palette::ink, 0.5, {}}));
  marks.shapes.push_back(line(curb.path, {palette::paved, 0.25, {}}));
  const std::string height = short_text_of(curb.height_m, Quantity::length, scene.style.units);
  add_named_along(marks, scene, curb.path, height + " high", palette::quiet_ink);
  return marks;
}

ItemMarks marks_of(const CatchBasin& basin, const Scene& scene) {
  ItemMarks marks;
  const double length_m = seen_width_m(basin.length_m, scene), width_m = seen_width_m(basin.width_m, scene);
  const Polygon box = rectangle({basin.at, basin.facing}, length_m, width_m);
  add_polygon(marks.shapes, box, palette::water.faded(0.2), {palette::water, 0.3, {}});
  const SiteVector along = direction(basin.facing) * (length_m / 2);
  add_bars(marks.shapes, {basin.at - along, basin.at + along}, width_m, std::max(length_m / 4, 0.05));
  add_label(marks, scene, around(box), Prefer::beside, "");
  return marks;
}

ItemMarks marks_of(const TrenchDrain& drain, const Scene& scene) {
  ItemMarks marks;
  const double width_m = seen_width_m(drain.width_m, scene);
  add_region(marks.shapes, strip_of(drain.path, width_m), palette::water.faded(0.2), {palette::water, 0.25, {}});
  add_bars(marks.shapes, drain.path, width_m, scene.style.metres_per_mm);
  add_words_along(marks, scene.style, drain.path, title_of(scene.item), palette::water);
  return marks;
}

ItemMarks marks_of(const TileLine& tile, const Scene& scene) {
  ItemMarks marks;
  marks.shapes.push_back(line(tile.path, {palette::water, 0.45, {2.2, 0.7}}));
  add_arrows(marks, tile.path, scene, 30, {palette::water, 0.35, {}});
  const std::string bore = short_text_of(tile.diameter_m, Quantity::small_length, scene.style.units);
  add_named_along(marks, scene, tile.path, bore, palette::water);
  return marks;
}

ItemMarks marks_of(const Downspout& downspout, const Scene& scene) {
  ItemMarks marks;
  const double side_m = 1.2 * scene.style.metres_per_mm;
  if (const Item* roof = find(scene.site, downspout.of))
    marks.shapes.push_back(line({place_of(roof->thing), downspout.at}, {palette::water, 0.15, {0.5, 0.7}}));
  add_polygon(marks.shapes, rectangle({downspout.at, {}}, side_m, side_m), palette::white, {palette::water, 0.35, {}});
  return marks;
}

ItemMarks marks_of(const ReceivingDitch& ditch, const Scene& scene) {
  ItemMarks marks;
  add_region(marks.shapes, strip_of(ditch.path, ditch.width_m), palette::water.faded(0.3), {palette::water, 0.25, {}});
  add_arrows(marks, ditch.path, scene, 40, {palette::water, 0.35, {}});
  add_words_along(marks, scene.style, ditch.path, title_of(scene.item), palette::water);
  return marks;
}

}  // namespace yardwright::plan
