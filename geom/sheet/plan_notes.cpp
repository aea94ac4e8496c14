#include <algorithm>

#include "geom/sheet/plan_item.hpp"
#include "geom/shape/path.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

DrawVector draw_vector(SiteVector v) { return {v.x, v.y}; }

PictureMark picture_mark(const Picture& picture, const PicturePixels& loaded) {
  const double height_m = picture.width_m * loaded.height_px / std::max(1, loaded.width_px);
  const SiteVector up = direction(picture.facing), right = right_of(up);
  PictureMark mark;
  mark.corner = on_plan(picture.at - right * (picture.width_m / 2) + up * (height_m / 2));
  mark.right = draw_vector(right * picture.width_m);
  mark.down = draw_vector(up * -height_m);
  mark.width_px = loaded.width_px;
  mark.height_px = loaded.height_px;
  mark.pixels = loaded.pixels;
  mark.strength = picture.strength_ratio;
  return mark;
}

void add_dimension_leg(ItemMarks& marks, SitePoint from, SitePoint to, UnitSystem units) {
  const Stroke stroke{palette::ink, 0.18, {}};
  const SiteVector along = to - from;
  marks.shapes.push_back(line({from, to}, stroke));
  marks.shapes.push_back(slanted_tick(from, along, 2.2, {palette::ink, 0.4, {}}));
  marks.shapes.push_back(slanted_tick(to, along, 2.2, {palette::ink, 0.4, {}}));
  TextMark size = words(between(from, to, 0.5), short_text_of(length(along), Quantity::length, units), 2.1, palette::ink);
  size.turn_deg = turn_along_deg(along);
  size.halo = palette::paper;
  marks.words.push_back(size);
}

}  // namespace

ItemMarks marks_of(const Picture& picture, const Scene& scene) {
  ItemMarks marks;
  const auto loaded = std::ranges::find(scene.style.pictures, scene.item.id, &PicturePixels::item);
  if (loaded != scene.style.pictures.end()) {
    marks.shapes.push_back(picture_mark(picture, *loaded));
    return marks;
  }
  const Polygon frame = rectangle({picture.at, picture.facing}, picture.width_m, picture.width_m);
  add_polygon(marks.shapes, frame, palette::none, {palette::faint_ink, 0.15, {1, 1}});
  if (scene.style.labels) marks.words.push_back(words(frame.outer.front(), title_of(scene.item), 1.9, palette::quiet_ink));
  return marks;
}

ItemMarks marks_of(const Dimension& dimension, const Scene& scene) {
  ItemMarks marks;
  if (!scene.style.dimensions) return marks;
  for (std::size_t i = 1; i < dimension.path.size(); ++i) {
    if (dimension.path[i - 1] == dimension.path[i]) continue;
    add_dimension_leg(marks, dimension.path[i - 1], dimension.path[i], scene.style.units);
  }
  return marks;
}

}  // namespace yardwright::plan
