#include "geom/sheet/letter_widths.hpp"

#include <array>
#include <cstdint>

namespace yardwright {

namespace {

/// Of ' ' to '~' in Inter Regular, in thousandths of the em; measured with TextMeasure (their test does it again).
constexpr std::array<std::int16_t, 95> advance{
    281, 278, 403, 631, 638, 813, 639, 222, 362, 362, 500, 659, 280, 460, 276, 357, 625, 464, 605,  //
    636, 642, 608, 624, 571, 616, 624, 276, 280, 659, 659, 659, 507, 936, 676, 651, 727, 719, 598,  //
    587, 743, 740, 264, 543, 652, 563, 889, 753, 761, 635, 761, 639, 638, 642, 741, 676, 949, 642,  //
    665, 625, 362, 357, 362, 469, 452, 497, 564, 621, 558, 621, 582, 361, 609, 591, 237, 237, 544,  //
    237, 869, 585, 597, 609, 609, 372, 523, 364, 581, 557, 813, 540, 557, 541, 362, 327, 362, 659};
constexpr int other_letter = 560;  ///< accented letters, degree and multiplication signs: the mean
constexpr std::string_view middle_dot = "·";
constexpr int dot_less = 276 - other_letter;  ///< the sign between a name's parts is much narrower than the mean
constexpr double bold_factor = 1.03;

int advance_of(unsigned char letter) {
  if (letter >= ' ' && letter <= '~') return advance[static_cast<std::size_t>(letter - ' ')];
  const bool is_rest_of_a_letter = (letter & 0xC0U) == 0x80U;
  return is_rest_of_a_letter ? 0 : other_letter;
}

}  // namespace

double width_of_words_mm(std::string_view text, double height_mm, bool bold) {
  int thousandths = 0;
  for (const char letter : text) thousandths += advance_of(static_cast<unsigned char>(letter));
  for (std::size_t at = text.find(middle_dot); at != text.npos; at = text.find(middle_dot, at + 1))
    thousandths += dot_less;
  return thousandths * height_mm / 1000 * (bold ? bold_factor : 1);
}

}  // namespace yardwright
