#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"

namespace yardwright::plan {

namespace {

constexpr double name_mm = 2.5;
constexpr double size_mm = 2.0;
constexpr double words_mm = 1.9;

}  // namespace

Around around(const Polygon& outline) {
  const Box box = box_of(outline.outer);
  return {between(box.low, box.high, 0.5), (box.high.x - box.low.x) / 2, (box.high.y - box.low.y) / 2, false};
}

Label name_and_size(const Scene& scene, const std::string& size) {
  Label label;
  label.lines.push_back({title_of(scene.item), name_mm, palette::ink, true});
  if (!size.empty()) label.lines.push_back({size, size_mm, palette::quiet_ink, false});
  label.owner = scene.item.id;
  return label;
}

void add_label(ItemMarks& marks, const Scene& scene, const Around& thing, Prefer prefer, const std::string& size) {
  if (!scene.style.labels) return;
  Label label = name_and_size(scene, size);
  add_spots_around(label, thing, prefer, scene.style.metres_per_mm);
  marks.labels.push_back(std::move(label));
}

void add_words_along(ItemMarks& marks, const PlanStyle& style, const SitePath& path, const std::string& text,
                     Colour colour) {
  if (!style.labels) return;
  Label label;
  label.lines.push_back({text, words_mm, colour, false});
  label.halo = palette::paper.faded(0.85);
  add_spots_along(label, path, {}, style.metres_per_mm);
  if (!label.spots.empty()) marks.labels.push_back(std::move(label));
}

void add_named_along(ItemMarks& marks, const Scene& scene, const SitePath& path, const std::string& size,
                     Colour colour) {
  add_words_along(marks, scene.style, path, title_of(scene.item) + " · " + size, colour);
}

void add_words_within(ItemMarks& marks, const Scene& scene, const SitePath& outline, const std::string& text,
                      Colour colour) {
  if (!scene.style.labels || outline.size() < 3) return;
  Label label;
  label.lines.push_back({text, words_mm, colour, false});
  label.owner = scene.item.id;
  label.halo = palette::paper.faded(0.85);
  add_spots_within(label, {outline, {}}, scene.style.metres_per_mm);
  marks.labels.push_back(std::move(label));
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
