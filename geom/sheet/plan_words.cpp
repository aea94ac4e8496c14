#include "geom/sheet/plan_item.hpp"
#include "geom/shape/path.hpp"

namespace yardwright::plan {

namespace {

constexpr double name_mm = 2.6;
constexpr double size_mm = 2.0;
constexpr double least_letter_mm = 1.6;

bool fits(const std::string& text, double height_mm, double room_m, const PlanStyle& style) {
  return rough_width_mm(text, height_mm) * style.metres_per_mm <= room_m;
}

/// Smaller letters for a name that is too wide for what it names; never so small that nobody reads it.
double height_that_fits_mm(const std::string& text, double wanted_mm, double room_m, const PlanStyle& style) {
  double height_mm = wanted_mm;
  while (height_mm > least_letter_mm && !fits(text, height_mm, room_m, style)) height_mm -= 0.1;
  return height_mm;
}

}  // namespace

void add_label(ItemMarks& marks, const Scene& scene, SitePoint at, const std::string& size, double room_m, double apart_mm) {
  if (!scene.style.labels) return;
  const std::string title = title_of(scene.item);
  const bool size_fits = !size.empty() && fits(size, least_letter_mm, room_m, scene.style);
  TextMark name = words(at, title, height_that_fits_mm(title, name_mm, room_m, scene.style), palette::ink);
  name.bold = true;
  name.halo = palette::white.faded(0.75);
  name.offset_mm = {0, size_fits ? -apart_mm : 0};
  marks.words.push_back(name);
  if (!size_fits) return;
  TextMark below = words(at, size, height_that_fits_mm(size, size_mm, room_m, scene.style), palette::quiet_ink);
  below.halo = palette::white.faded(0.75);
  below.offset_mm = {0, apart_mm};
  marks.words.push_back(below);
}

void add_label_under(ItemMarks& marks, const Scene& scene, const Polygon& box, const std::string& size) {
  if (!scene.style.labels) return;
  const SitePoint under{centroid(box).x, box_of(box.outer).low.y};
  TextMark name = words(under, title_of(scene.item), 2.3, palette::ink);
  name.bold = true;
  name.offset_mm = {0, 2.2};
  TextMark below = words(under, size, 1.9, palette::quiet_ink);
  below.offset_mm = {0, 4.8};
  marks.words.push_back(name);
  marks.words.push_back(below);
}

void add_words_along(ItemMarks& marks, const SitePath& path, const std::string& text, Colour colour) {
  if (length(path) <= 0) return;
  const Pose middle = pose_at(path, length(path) / 2);
  TextMark mark = words(middle.at, text, 1.9, colour);
  mark.turn_deg = turn_along_deg(direction(middle.facing));
  const Angle turn = Angle::degrees(mark.turn_deg);
  mark.offset_mm = {2.0 * sin(turn), -2.0 * cos(turn)};
  marks.words.push_back(mark);
}

void add_arrows(ItemMarks& marks, const SitePath& path, const Scene& scene, double spacing_mm, const Stroke& stroke) {
  const double total_m = length(path);
  if (total_m <= 0) return;
  const double spacing_m = spacing_mm * scene.style.metres_per_mm;
  const int count = std::max(1, static_cast<int>(std::min(200.0, total_m / spacing_m)));
  for (int i = 0; i < count; ++i) {
    const Pose pose = pose_at(path, total_m * (i + 0.62) / count);
    marks.shapes.push_back(arrowhead(pose.at, direction(pose.facing), 1.5, stroke));
  }
}

}  // namespace yardwright::plan
