// What to draw, without saying on what: marks in one flat coordinate frame, drawn by a device (window, PDF, SVG,
// PNG). Marks are placed in the drawing's own units (site metres for a plan, paper millimetres for a table);
// strokes and letters are always in paper millimetres, so that they do not grow with the scale.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "geom/shape/pixels.hpp"
#include "geom/shape/point.hpp"

namespace yardwright {

struct DrawingFrame {};
using DrawPoint = PointIn<DrawingFrame>;
using DrawVector = VectorIn<DrawingFrame>;

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0, alpha = 255;
  bool operator==(const Colour&) const = default;
  constexpr Colour faded(double part) const { return {red, green, blue, static_cast<std::uint8_t>(alpha * part)}; }
};

struct Stroke {
  Colour colour;
  double width_mm = 0.25;
  std::vector<double> dash_mm;  ///< lengths on, off, on ...; empty is solid
};

struct LineMark {
  std::vector<DrawPoint> points;
  Stroke stroke;
  bool closed = false;
};

/// Rings filled by the even-odd rule, so that holes stay open.
struct AreaMark {
  std::vector<std::vector<DrawPoint>> rings;
  Colour fill;
};

struct CircleMark {
  DrawPoint centre;
  double radius = 0;        ///< in the drawing's units
  Colour fill{0, 0, 0, 0};  ///< alpha 0: none
  Stroke stroke;            ///< width 0: none
};

enum class Anchor : std::uint8_t { left, middle, right };

struct TextMark {
  DrawPoint at;  ///< on the base line, or its middle height where `centred`
  std::string text;
  double height_mm = 2.5;  ///< of the letters' em
  Colour colour;
  Anchor anchor = Anchor::left;
  bool bold = false;
  bool centred = true;
  double turn_deg = 0;      ///< clockwise on the paper
  Colour halo{0, 0, 0, 0};  ///< behind the letters so that lines do not cross them; alpha 0: none
  DrawVector offset_mm;     ///< from `at`, right and down on the paper
};

/// A symbol of fixed size on the paper, given by marks in millimetres around its place (y down).
struct SymbolMark {
  DrawPoint at;
  std::vector<std::variant<LineMark, AreaMark, CircleMark>> marks;
};

/// A picture stretched over a parallelogram: corner of its first pixel, its right and its down edge.
struct PictureMark {
  DrawPoint corner;
  DrawVector right, down;
  Pixels pixels;
  double strength = 1;
};

using Mark = std::variant<LineMark, AreaMark, CircleMark, TextMark, SymbolMark, PictureMark>;

/// Marks in the order in which they are drawn; later ones cover earlier ones. `y_up` says whether the drawing's
/// y goes up (site metres) or down (paper millimetres).
struct Drawing {
  std::vector<Mark> marks;
  bool y_up = true;
};

/// Where a drawing lands on a device: the device point of the drawing's origin, device units for one unit of the
/// drawing, device units for one millimetre on paper.
struct Placement {
  double origin_x = 0, origin_y = 0;
  double per_unit = 1;
  double per_mm = 1;
};

}  // namespace yardwright
