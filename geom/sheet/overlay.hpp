// Findings laid over a plan: each verdict's symbol at its place, with the number and the mend, or with the number
// under which the sheet's table lists it. In site metres, to be drawn over plan_drawing.
#pragma once

#include "geom/sheet/plan_parts.hpp"
#include "geom/site/finding.hpp"

namespace yardwright {

enum class OverlayWords : std::uint8_t {
  cards,    ///< margin and mend beside the symbol
  numbers,  ///< the finding's place in the list, from 1
};

struct OverlayStyle {
  UnitSystem units = UnitSystem::us;
  double metres_per_mm = 0.5;  ///< of the paper or screen: decides where labels would lie over each other
  OverlayWords words = OverlayWords::cards;
  Verdict least = Verdict::not_checked;  ///< what is better than this is left out
  std::optional<Question> question;      ///< only its findings; numbers stay those of the whole list
  bool places = true;                    ///< draw the findings' own lines too
};

/// Signs, numbers and lines, to be joined with a plan's parts.
PlanParts finding_parts(const Findings& findings, const OverlayStyle& style);

Drawing finding_overlay(const Findings& findings, const OverlayStyle& style = {});

}  // namespace yardwright
