#include "editor/canvas/answer_cache.hpp"

#include "geom/sheet/answer_drawing.hpp"
#include "geom/sheet/label_box.hpp"
#include "geom/sheet/letter_widths.hpp"
#include "geom/sheet/plan_item.hpp"

namespace yardwright::canvas {

namespace {

/// The box around words that stand on the plan.
Obstacle obstacle_of(const TextMark& words, double metres_per_mm) {
  const LabelBox box =
      label_box({words.offset_mm.x, words.offset_mm.y}, width_of_words_mm(words.text, words.height_mm, words.bold),
                words.height_mm * 1.3, words.turn_deg);
  SitePath around;
  for (const PaperPoint corner : box.corners())
    around.push_back(SitePoint{words.at.x, words.at.y} + SiteVector{corner.x, -corner.y} * metres_per_mm);
  return {std::move(around), 1, true, 0, {}};
}

std::vector<Obstacle> obstacles_of(const PlanBelow& plan) {
  std::vector<Obstacle> obstacles = plan::obstacles_of(plan.site);
  for (const Mark& mark : plan.drawing.marks) {
    const TextMark* words = std::get_if<TextMark>(&mark);
    if (words != nullptr && words->anchor == Anchor::middle)
      obstacles.push_back(obstacle_of(*words, plan.metres_per_mm));
  }
  return obstacles;
}

}  // namespace

const Drawing& AnswerCache::turn(const Answers& answers) {
  if (turn_.of != answers.turn) {
    turn_ = {answers.turn, turn_drawing(*answers.turn)};
    ++times_made_;
  }
  return turn_.drawing;
}

void AnswerCache::shape_drain(const Answers& answers, UnitSystem units) {
  if (drain_.of == answers.drain && drain_units_ == units) return;
  drain_shape_ = drain_shape(*answers.drain, answers.surface, contour_interval_m(answers.surface, units));
  drain_units_ = units;
}

const Drawing& AnswerCache::drain(const Answers& answers, const PlanBelow& plan) {
  const bool same = drain_.of == answers.drain && drain_units_ == plan.site.units && plan_revision_ == plan.revision &&
                    metres_per_mm_ == plan.metres_per_mm;
  if (same) return drain_.drawing;
  shape_drain(answers, plan.site.units);
  plan_revision_ = plan.revision;
  metres_per_mm_ = plan.metres_per_mm;
  PlanStyle style;
  style.units = plan.site.units;
  style.metres_per_mm = plan.metres_per_mm;
  PlanParts parts =
      drain_shape_parts(drain_shape_, *answers.drain, answers.surface, plan.site, style, obstacles_of(plan));
  drain_ = {answers.drain, with_labels(std::move(parts), {plan.metres_per_mm, {}})};
  ++times_made_;
  return drain_.drawing;
}

}  // namespace yardwright::canvas
