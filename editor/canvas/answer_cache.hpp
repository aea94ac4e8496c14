// The drawings of an answer over the plan, kept for as long as the answer is the same one. They are in site metres, so
// neither panning nor zooming makes them anew.
#pragma once

#include "geom/check/check.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

class AnswerCache {
 public:
  const Drawing& turn(const Answers& answers);
  const Drawing& drain(const Answers& answers);
  /// How often any of them has been made.
  int times_made() const { return times_made_; }

 private:
  template <class Part>
  struct Kept {
    std::shared_ptr<const Part> of;  ///< held, so that no other answer can take its place in memory
    Drawing drawing;
  };
  Kept<turn::Answer> turn_;
  Kept<drain::Answer> drain_;
  int times_made_ = 0;
};

}  // namespace yardwright::canvas
