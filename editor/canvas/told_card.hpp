// A small card beside a place on the plan, joined to it by a line: a headline, what is measured, and what would mend it.
#pragma once

#include "editor/canvas/overlay.hpp"

namespace yardwright::canvas {

struct ToldCard {
  SitePoint about;
  std::vector<std::string> lines;  ///< the first one bold
  std::size_t coloured = 1;        ///< the line in the card's colour
  Colour colour;
};

/// Around its place where it hides least of the plan.
void draw_told_card(const ToldCard& card, const session::Session& session, const session::View& view,
                    const look::Look& look, ImDrawList& list);

}  // namespace yardwright::canvas
