#include "geom/sheet/drain_plan.hpp"

#include "geom/ground/fall.hpp"
#include "geom/ground/graded_contours.hpp"
#include "geom/sheet/answer_drawing.hpp"
#include "geom/sheet/palette.hpp"
#include "geom/sheet/slope_arrows.hpp"

namespace yardwright {

namespace {

constexpr double over_water = 2;  ///< what words on the edge of a pond or a catchment cost
constexpr double sign_mm = 5;     ///< kept free around the place of a finding, for its sign

void add_rings(std::vector<Obstacle>& obstacles, const std::vector<SitePath>& rings, bool solid) {
  for (SitePath ring : rings) {
    if (ring.empty()) continue;
    ring.push_back(ring.front());
    obstacles.push_back({std::move(ring), over_water, solid, 0, {}});
  }
}

/// The lines of the water itself.
std::vector<Obstacle> obstacles_of(const drain::Answer& answer) {
  std::vector<Obstacle> obstacles;
  for (const drain::Pond& pond : answer.ponds) add_rings(obstacles, pond.rings, true);
  for (const drain::PitWater& pit : answer.pits) add_rings(obstacles, pit.catchment_rings, false);
  return obstacles;
}

void add_signs(std::vector<Obstacle>& obstacles, const Findings& findings) {
  for (const Finding& finding : findings) {
    if (finding.place.empty() || finding.verdict > Verdict::caution) continue;
    const SitePoint at = pose_at(finding.place, length(finding.place) / 2).at;
    obstacles.push_back({Disc{at, 0}, over_water, true, sign_mm, {}});
  }
}

/// Whether there is room for the level of every contour where this one is in its middle; not where it is an index contour,
/// which has a level anyway.
bool is_far_apart(const Contour& contour, const DesignSurface& surface, double interval_m, const PlanStyle& style) {
  constexpr double far_mm = 16;
  if (contour.index) return false;
  const auto fall = fall_at(surface.design, contour.points[contour.points.size() / 2],
                            std::max(far_mm / 2 * style.metres_per_mm, 2 * surface.design.frame().cell_m));
  return fall && fall->grade_ratio * far_mm * style.metres_per_mm < interval_m;
}

}  // namespace

const ContourLook existing_contour_look{
    palette::quiet_ink, palette::quiet_ink, palette::quiet_ink, {1.3, 0.9}, 0.18, 0.26, 14, true};
const ContourLook design_contour_look{
    palette::earth.faded(0.75), palette::earth, palette::slope, {}, 0.16, 0.35, 30, false};

PlanParts design_contour_parts(const DesignSurface& surface, double interval_m, const PlanStyle& style) {
  if (!(interval_m > 0)) return {};
  std::vector<Contour> far, near;
  for (Contour& contour : contours(surface.design, interval_m))
    (is_far_apart(contour, surface, interval_m, style) ? far : near).push_back(std::move(contour));
  ContourLook every = design_contour_look;
  every.labels_every = true;
  every.least_labelled_mm = 60;
  PlanParts parts = contour_parts(near, style, design_contour_look);
  add(parts, contour_parts(far, style, every));
  return parts;
}

DrainShape drain_shape(const drain::Answer& answer, const DesignSurface& surface, double interval_m) {
  DrainShape shape;
  if (interval_m > 0) shape.existing = existing_contours_where_graded(surface, interval_m);
  shape.ways = water_ways(answer);
  return shape;
}

PlanParts drain_shape_parts(const DrainShape& shape, const drain::Answer& answer, const DesignSurface& surface,
                            const Site& site, const PlanStyle& style, std::vector<Obstacle> keep_off) {
  PlanParts parts = contour_parts(shape.existing, style, existing_contour_look);
  add(parts, {drain_drawing(answer).marks, {}, obstacles_of(answer)});
  add(parts, way_parts(shape.ways, style.metres_per_mm));
  keep_off.insert(keep_off.end(), parts.obstacles.begin(), parts.obstacles.end());
  add_signs(keep_off, answer.findings);
  add(parts, slope_arrow_parts(slope_arrows(site, surface, keep_off, style.metres_per_mm), style.metres_per_mm));
  return parts;
}

}  // namespace yardwright
