#include "editor/canvas/answer_cache.hpp"

#include "geom/sheet/answer_drawing.hpp"

namespace yardwright::canvas {

const Drawing& AnswerCache::turn(const Answers& answers) {
  if (turn_.of != answers.turn) {
    turn_ = {answers.turn, turn_drawing(*answers.turn)};
    ++times_made_;
  }
  return turn_.drawing;
}

const Drawing& AnswerCache::drain(const Answers& answers) {
  if (drain_.of != answers.drain) {
    drain_ = {answers.drain, drain_drawing(*answers.drain)};
    ++times_made_;
  }
  return drain_.drawing;
}

}  // namespace yardwright::canvas
