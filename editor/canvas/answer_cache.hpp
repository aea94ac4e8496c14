// The drawings of an answer over the plan, kept for as long as the answer is the same one. They are in site metres, so that
// panning makes none anew; Drain's arrows and their spacing are of the paper, so that zooming does.
#pragma once

#include "geom/check/check.hpp"
#include "geom/sheet/drain_plan.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

/// The plan that Drain is drawn over: its arrows keep off what stands there and off its words.
struct PlanBelow {
  const Site& site;
  const Drawing& drawing;
  std::uint64_t revision = 0;
  double metres_per_mm = 0.5;
};

class AnswerCache {
 public:
  const Drawing& turn(const Answers& answers);
  const Drawing& drain(const Answers& answers, const PlanBelow& plan);
  /// How often any of them has been made.
  int times_made() const { return times_made_; }

 private:
  template <class Part>
  struct Kept {
    std::shared_ptr<const Part> of;  ///< held, so that no other answer can take its place in memory
    Drawing drawing;
  };
  void shape_drain(const Answers& answers, UnitSystem units);

  Kept<turn::Answer> turn_;
  Kept<drain::Answer> drain_;
  DrainShape drain_shape_;
  UnitSystem drain_units_ = UnitSystem::us;
  std::uint64_t plan_revision_ = 0;
  double metres_per_mm_ = 0;
  int times_made_ = 0;
};

}  // namespace yardwright::canvas
