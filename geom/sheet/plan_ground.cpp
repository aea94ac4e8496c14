#include <algorithm>

#include "geom/ground/contours.hpp"
#include "geom/ground/fall.hpp"
#include "geom/shape/path.hpp"
#include "geom/sheet/hillshade_mark.hpp"
#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright {

namespace {

constexpr double label_spacing_mm = 110;
constexpr double drainage_spacing_mm = 8;  ///< of contours on the mean slope, at least

SitePath whole_path(const Contour& contour) {
  SitePath path = contour.points;
  if (contour.closed && !path.empty()) path.push_back(path.front());
  return path;
}

/// The level of an index contour, set into the line and turned along it; left out where it would lie on a thing.
void add_levels(PlanParts& parts, const Contour& contour, const SitePath& path, const PlanStyle& style,
                const ContourLook& look) {
  const double total_mm = length(path) / style.metres_per_mm;
  if (total_mm < look.least_labelled_mm) return;
  const int count = 1 + static_cast<int>(total_mm / label_spacing_mm);
  for (int i = 0; i < count; ++i) {
    Label level;
    level.lines.push_back({short_text_of(contour.level_m, Quantity::length, style.units), 1.7, look.words});
    level.halo = palette::paper;
    level.may_be_left_out = true;
    add_spots_along(level, path, {true, 9, 1.0 * i / count, (i + 1.0) / count}, style.metres_per_mm);
    parts.labels.push_back(std::move(level));
  }
}

}  // namespace

double contour_interval_m(const DesignSurface& surface, UnitSystem units) {
  return surface.known() ? sensible_interval_m(relief_m(surface.design), units) : 0;
}

double drainage_interval_m(const DesignSurface& surface, const PlanStyle& style) {
  const double usual_m = contour_interval_m(surface, style.units);
  const double grade = mean_grade(surface.design);
  if (!(grade > 0)) return usual_m;
  return std::min(usual_m, least_interval_m(drainage_spacing_mm * style.metres_per_mm * grade, style.units));
}

GroundShape ground_shape(const DesignSurface& surface, UnitSystem units) {
  const double interval_m = contour_interval_m(surface, units);
  return {hillshade_mark(surface.design),
          interval_m > 0 ? contours(surface.design, interval_m) : std::vector<Contour>{}};
}

PlanParts contour_parts(const LevelGrid& levels, double interval_m, const PlanStyle& style, const ContourLook& look) {
  if (levels.empty() || !(interval_m > 0)) return {};
  return contour_parts(contours(levels, interval_m), style, look);
}

PlanParts contour_parts(const std::vector<Contour>& lines, const PlanStyle& style, const ContourLook& look) {
  PlanParts parts;
  for (const Contour& contour : lines) {
    const SitePath path = whole_path(contour);
    parts.shapes.push_back(line(path, {contour.index ? look.index_line : look.line,
                                       contour.index ? look.index_mm : look.line_mm, look.dash_mm}));
    if ((contour.index || look.labels_every) && style.labels) add_levels(parts, contour, path, style, look);
  }
  return parts;
}

}  // namespace yardwright
