// What each question has computed, as parts of its own plan in the plan set: shapes with their words, which are placed
// together with the plan's. The shapes alone, for the window, are in answer_drawing.hpp.
#pragma once

#include "geom/check/check.hpp"
#include "geom/sheet/plan_parts.hpp"

namespace yardwright {

/// Rings of reach and every spout with its slope and length, in the colour of its verdict.
PlanParts reach_parts(const reach::Answer& answer, const PlanStyle& style);
/// The swept way of every route and its nearest places.
PlanParts turn_parts(const turn::Answer& answer, const PlanStyle& style);
/// Contours of the ground as it lies and as it will lie, its fall, the ways of the water, ponds and catchments. Slope arrows
/// keep off `keep_off` besides the yard.
PlanParts drain_parts(const drain::Answer& answer, const DesignSurface& surface, const Site& site,
                      const PlanStyle& style, const std::vector<Obstacle>& keep_off = {});
/// The nearest pairs with their distance, and the strips under overhead lines.
PlanParts clear_parts(const clear::Answer& answer, const PlanStyle& style);
/// What stays on the floor of every bin.
PlanParts pace_parts(const pace::Answer& answer, const Site& site, const PlanStyle& style);

PlanParts answer_parts(Question question, const Answers& answers, const Site& site, const PlanStyle& style,
                       const std::vector<Obstacle>& keep_off = {});

}  // namespace yardwright
