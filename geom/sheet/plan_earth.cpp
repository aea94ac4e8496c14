#include <fmt/format.h>

#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

/// Ticks down both sides of a bank, long and short in turn, from its top edge towards its toe.
void add_hachures(Marks& marks, const SitePath& path, double top_m, double toe_m, double spacing_m) {
  const Stroke stroke{palette::earth, 0.13, {}};
  const double total_m = length(path);
  int count = 0;
  for (double station_m = spacing_m / 2; station_m < total_m; station_m += spacing_m, ++count) {
    const Pose pose = pose_at(path, station_m);
    const double end_m = count % 2 == 0 ? toe_m : (top_m + toe_m) / 2;
    for (const double side : {-1.0, 1.0}) {
      const SiteVector out = right_of(direction(pose.facing)) * side;
      marks.push_back(line({pose.at + out * top_m, pose.at + out * end_m}, stroke));
    }
  }
}

Colour cover_colour(std::string_view cover) {
  if (cover.find("gravel") != cover.npos) return palette::gravel;
  if (cover.find("paved") != cover.npos || cover.find("roof") != cover.npos) return palette::paved;
  if (cover.find("row") != cover.npos || cover.find("crop") != cover.npos) return palette::crop;
  if (cover.find("dirt") != cover.npos) return palette::dirt;
  return palette::grass;
}

}  // namespace

ItemMarks marks_of(const Berm& berm, const Scene& scene) {
  ItemMarks marks;
  const double top_m = berm.top_width_m / 2;
  const double toe_m = top_m + berm.height_m * berm.side_slope_ratio;
  add_region(marks.shapes, strip_of(berm.path, 2 * toe_m), palette::earth.faded(0.10), {palette::none, 0, {}});
  add_region(marks.shapes, strip_of(berm.path, 2 * top_m), palette::earth.faded(0.30), {palette::earth, 0.18, {}});
  add_hachures(marks.shapes, berm.path, top_m, toe_m, 1.1 * scene.style.metres_per_mm);
  add_named_along(marks, scene, berm.path, short_text_of(berm.height_m, Quantity::length, scene.style.units) + " high",
                  palette::earth);
  return marks;
}

ItemMarks marks_of(const Swale& swale, const Scene& scene) {
  ItemMarks marks;
  add_region(marks.shapes, strip_of(swale.path, swale.drawn_width_m()), palette::water.faded(0.10),
             {palette::water, 0.12, {0.5, 0.8}});
  marks.shapes.push_back(line(swale.path, {palette::water, 0.3, {3, 0.8}}));
  add_arrows(marks, swale.path, scene, 16, {palette::water, 0.35, {}});
  add_words_along(marks, scene.style, swale.path, title_of(scene.item), palette::water);
  return marks;
}

ItemMarks marks_of(const Pad& pad, const Scene& scene) {
  ItemMarks marks;
  add_polygon(marks.shapes, {pad.outline, {}}, palette::white.faded(0.45), {palette::earth, 0.25, {3, 1, 0.8, 1}});
  const std::string level_text = short_text_of(pad.level_m, Quantity::length, scene.style.units);
  const std::string text = fmt::format("{} · level {}", title_of(scene.item), level_text);
  add_words_within(marks, scene, pad.outline, text, palette::earth);
  return marks;
}

ItemMarks marks_of(const Culvert& culvert, const Scene& scene) {
  ItemMarks marks;
  const double width_m = std::max(culvert.diameter_m, 0.9 * scene.style.metres_per_mm);
  add_region(marks.shapes, strip_of(culvert.path, width_m), palette::water.faded(0.12),
             {palette::water, 0.25, {1.4, 0.7}});
  add_arrows(marks, culvert.path, scene, 40, {palette::water, 0.35, {}});
  add_named_along(marks, scene, culvert.path,
                  short_text_of(culvert.diameter_m, Quantity::small_length, scene.style.units), palette::water);
  return marks;
}

ItemMarks marks_of(const Cover& cover, const Scene& scene) {
  ItemMarks marks;
  add_polygon(marks.shapes, {cover.outline, {}}, cover_colour(cover.cover).faded(0.55),
              {palette::earth.faded(0.6), 0.15, {0.3, 0.9}});
  add_words_within(marks, scene, cover.outline, scene.item.name.empty() ? cover.cover : scene.item.name,
                   palette::earth);
  return marks;
}

}  // namespace yardwright::plan
