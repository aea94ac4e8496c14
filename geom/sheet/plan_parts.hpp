// A plan before its words have their places: shapes, labels, and what the labels keep off. Parts are joined first and
// their words placed together, so that a finding's number and a bin's name never lie on each other.
#pragma once

#include "geom/sheet/label.hpp"
#include "geom/sheet/plan_drawing.hpp"

namespace yardwright {

struct PlanParts {
  std::vector<Mark> shapes;
  std::vector<Label> labels;
  std::vector<Obstacle> obstacles;
};

/// Lot, ground and items.
PlanParts plan_parts(const Site& site, const DesignSurface& surface, const PlanStyle& style);

/// How the contours of a ground are drawn.
struct ContourLook {
  Colour line, index_line, words;
  std::vector<double> dash_mm;
  double line_mm = 0.13, index_mm = 0.25;
  double least_labelled_mm = 30;  ///< a shorter contour says no level
  bool labels_every = false;      ///< not only the index contours
};
/// The lines of a ground alone.
PlanParts contour_parts(const LevelGrid& levels, double interval_m, const PlanStyle& style, const ContourLook& look);
PlanParts contour_parts(const std::vector<Contour>& contours, const PlanStyle& style, const ContourLook& look);
/// The interval at which a plan of this ground is drawn; 0 without ground.
double contour_interval_m(const DesignSurface& surface, UnitSystem units);

/// That of a plan about drainage: as fine as keeps the lines of the mean slope well apart on the paper.
double drainage_interval_m(const DesignSurface& surface, const PlanStyle& style);

/// `more` drawn over `parts`.
void add(PlanParts& parts, PlanParts more);
/// One drawing, in site metres.
Drawing with_labels(PlanParts parts, const LabelPaper& paper);

}  // namespace yardwright
