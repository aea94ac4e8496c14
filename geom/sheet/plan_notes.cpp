#include <algorithm>

#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/site/picture_fit.hpp"

namespace yardwright::plan {

namespace {

DrawVector draw_vector(SiteVector v) { return {v.x, v.y}; }

PictureMark picture_mark(const Picture& picture, const Pixels& pixels) {
  const SiteVector up = direction(picture.facing), right = right_of(up);
  PictureMark mark;
  mark.corner = on_plan(place_in_picture(picture, 0, 0));
  mark.right = draw_vector(right * picture.width_m);
  mark.down = draw_vector(up * -height_m(picture));
  mark.pixels = pixels;
  mark.strength = picture.strength_ratio;
  return mark;
}

void add_dimension_leg(ItemMarks& marks, SitePoint from, SitePoint to, const PlanStyle& style) {
  const Stroke stroke{palette::ink, 0.18, {}};
  const SiteVector along = to - from;
  marks.shapes.push_back(line({from, to}, stroke));
  marks.shapes.push_back(slanted_tick(from, along, 2.2, {palette::ink, 0.4, {}}));
  marks.shapes.push_back(slanted_tick(to, along, 2.2, {palette::ink, 0.4, {}}));
  Label size;
  size.lines.push_back({short_text_of(length(along), Quantity::length, style.units), 2.1});
  size.halo = palette::paper;
  add_spots_along(size, {from, to}, {.set_in = true, .places = 5}, style.metres_per_mm);
  marks.labels.push_back(std::move(size));
}

}  // namespace

ItemMarks marks_of(const Picture& picture, const Scene& scene) {
  ItemMarks marks;
  const auto loaded = std::ranges::find(scene.style.pictures, scene.item.id, &PicturePixels::item);
  if (loaded != scene.style.pictures.end()) {
    marks.shapes.push_back(picture_mark(picture, loaded->pixels));
    return marks;
  }
  const Polygon frame = rectangle({picture.at, picture.facing}, height_m(picture), picture.width_m);
  add_polygon(marks.shapes, frame, palette::none, {palette::faint_ink, 0.15, {1, 1}});
  add_words_within(marks, scene, frame.outer, title_of(scene.item), palette::quiet_ink);
  return marks;
}

ItemMarks marks_of(const Dimension& dimension, const Scene& scene) {
  ItemMarks marks;
  if (!scene.style.dimensions) return marks;
  for (std::size_t i = 1; i < dimension.path.size(); ++i) {
    if (dimension.path[i - 1] == dimension.path[i]) continue;
    add_dimension_leg(marks, dimension.path[i - 1], dimension.path[i], scene.style);
  }
  return marks;
}

}  // namespace yardwright::plan
