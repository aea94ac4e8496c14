// Icons drawn for this project, as marks in paper millimetres around (0, 0), y down: one for each kind, within
// 4 mm of the middle, for the legend and the tray; and one for each verdict, within 1.6 mm.
#pragma once

#include <string_view>

#include "geom/sheet/marks.hpp"
#include "geom/site/finding.hpp"

namespace yardwright {

inline constexpr double kind_symbol_half_mm = 4.0;
inline constexpr double verdict_symbol_half_mm = 1.6;

/// The icon of the kind with this key ("overhead-line"); empty where no kind has it.
SymbolMarks symbol_of_kind(std::string_view key);

/// Fail: a cross. Caution: a triangle. Pass: a tick. Not checked: a dotted ring.
SymbolMarks symbol_of(Verdict verdict);

/// The same marks larger or smaller; strokes keep their width.
SymbolMarks scaled(SymbolMarks marks, double factor);
/// The same marks at another place of a drawing in paper millimetres.
SymbolMarks shifted(SymbolMarks marks, DrawVector by);

}  // namespace yardwright
