// A hand on the plan without a display: it moves a pointer and presses buttons, a frame each, as the window does.
#pragma once

#include "editor/canvas/pointer.hpp"

namespace yardwright::tests {

class Hand {
 public:
  explicit Hand(Site site);
  ~Hand();
  Hand(const Hand&) = delete;
  Hand& operator=(const Hand&) = delete;

  void move(SitePoint at);
  void press();
  void release();
  void click(SitePoint at);
  void drag(SitePoint from, SitePoint to);
  void wheel(SitePoint at, float steps);
  void hold_shift(bool held);
  void hold_alt(bool held);

  session::Session session;
  session::View view;
  canvas::Pointer pointer;
  look::Look look;

 private:
  void frame();
};

}  // namespace yardwright::tests
