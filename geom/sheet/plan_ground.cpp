#include "geom/ground/contours.hpp"
#include "geom/shape/path.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright {

namespace {

constexpr double least_labelled_mm = 45;  ///< a shorter contour says no level
constexpr double label_spacing_mm = 110;

SitePath whole_path(const Contour& contour) {
  SitePath path = contour.points;
  if (contour.closed && !path.empty()) path.push_back(path.front());
  return path;
}

/// The level of an index contour, set into the line and turned along it.
void add_levels(Marks& marks, const Contour& contour, const SitePath& path, const PlanStyle& style) {
  const double total_mm = length(path) / style.metres_per_mm;
  if (total_mm < least_labelled_mm) return;
  const int count = 1 + static_cast<int>(total_mm / label_spacing_mm);
  for (int i = 0; i < count; ++i) {
    const Pose pose = pose_at(path, length(path) * (i + 0.5) / count);
    TextMark level = words(pose.at, short_text_of(contour.level_m, Quantity::length, style.units), 1.7, palette::earth);
    level.turn_deg = turn_along_deg(direction(pose.facing));
    level.halo = palette::paper;
    marks.push_back(level);
  }
}

}  // namespace

Drawing contour_drawing(const DesignSurface& surface, const PlanStyle& style) {
  Drawing drawing;
  if (!surface.known()) return drawing;
  const double interval_m = sensible_interval_m(relief_m(surface.design), style.units);
  if (!(interval_m > 0)) return drawing;
  for (const Contour& contour : contours(surface.design, interval_m)) {
    const SitePath path = whole_path(contour);
    const Stroke stroke{contour.index ? palette::index_contour : palette::contour, contour.index ? 0.25 : 0.13, {}};
    drawing.marks.push_back(line(path, stroke));
    if (contour.index && style.labels) add_levels(drawing.marks, contour, path, style);
  }
  return drawing;
}

}  // namespace yardwright
