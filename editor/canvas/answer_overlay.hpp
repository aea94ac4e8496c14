// The chosen question's answer over the plan: for Reach the rings and the spouts with their angles; for every question
// what fails or wants care, drawn at its place, and the pointed one told with its number and its mend.
#pragma once

#include "editor/canvas/answer_cache.hpp"
#include "editor/canvas/overlay.hpp"
#include "geom/check/check.hpp"

namespace yardwright::canvas {

struct AnswerInput {
  const session::Session& session;
  const session::View& view;
  const Answers& answers;
  const look::Look& look;
  const Drawing& plan;  ///< that lies below
};

void draw_answer(const AnswerInput& input, AnswerCache& kept, ImDrawList& list);

}  // namespace yardwright::canvas
