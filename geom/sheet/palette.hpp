// The colours of the plan, by what they stand for: warm paper, ink, three signals, and quiet tints for the
// things of a yard. Everything that is drawn takes its colour from here.
#pragma once

#include "geom/sheet/drawing.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::palette {

inline constexpr Colour none{0, 0, 0, 0};
inline constexpr Colour white{0xff, 0xff, 0xff};
inline constexpr Colour paper{0xf5, 0xf2, 0xea};
inline constexpr Colour card{0xfc, 0xfb, 0xf8};
inline constexpr Colour ink{0x2a, 0x2e, 0x33};
inline constexpr Colour quiet_ink{0x68, 0x6d, 0x73};
inline constexpr Colour faint_ink{0xb9, 0xb9, 0xb4};
inline constexpr Colour rule_line{0xd9, 0xd5, 0xca};

inline constexpr Colour fail{0xc8, 0x50, 0x1e};
inline constexpr Colour caution{0xc9, 0x8a, 0x00};
inline constexpr Colour pass{0x1d, 0x7f, 0x62};
inline constexpr Colour not_checked{0x9a, 0xa0, 0xa6};

inline constexpr Colour water{0x2a, 0x6f, 0xb0};
inline constexpr Colour reach{0x8a, 0x4f, 0x9e};
inline constexpr Colour fuel{0xa3, 0x5b, 0x38};

inline constexpr Colour contour{0xcb, 0xbf, 0xa6};
inline constexpr Colour index_contour{0xab, 0x9b, 0x7a};
inline constexpr Colour earth{0x9c, 0x83, 0x57};
inline constexpr Colour slope{0x6b, 0x4a, 0x1f};
inline constexpr Colour steel{0xe6, 0xe9, 0xea};
inline constexpr Colour steel_rib{0xb4, 0xba, 0xbe};
inline constexpr Colour timber{0xec, 0xe4, 0xd2};
inline constexpr Colour gravel{0xe2, 0xd9, 0xc6};
inline constexpr Colour paved{0xd6, 0xd4, 0xcf};
inline constexpr Colour dirt{0xdc, 0xcd, 0xb2};
inline constexpr Colour grass{0xdf, 0xe4, 0xcf};
inline constexpr Colour crop{0xe9, 0xe4, 0xc4};

constexpr Colour of(Verdict verdict) {
  switch (verdict) {
    case Verdict::fail: return fail;
    case Verdict::caution: return caution;
    case Verdict::pass: return pass;
    case Verdict::not_checked: break;
  }
  return not_checked;
}

}  // namespace yardwright::palette
