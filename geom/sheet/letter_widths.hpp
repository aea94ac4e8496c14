// How wide words are without asking a font: the advance widths of Inter, enough to give labels their places on a plan
// that is drawn while it is dragged. Tables and frames are set by TextMeasure, which asks the font.
#pragma once

#include <string_view>

namespace yardwright {

double width_of_words_mm(std::string_view text, double height_mm, bool bold = false);

}  // namespace yardwright
