// How a drawing's marks are put onto a Cairo context whose unit is a paper millimetre. Inside of the Cairo device;
// everyone else uses cairo_device.hpp.
#pragma once

#include <map>
#include <string>

#include "geom/sheet/page.hpp"

struct _cairo;            // cairo_t, so that no header needs Cairo
struct _cairo_font_face;  // cairo_font_face_t

namespace yardwright::cairo {

/// Inter in two weights, opened once; text with letters that Inter lacks gets the font that has them.
class Letters {
 public:
  Letters() = default;
  ~Letters();
  Letters(const Letters&) = delete;
  Letters& operator=(const Letters&) = delete;

  void select(_cairo* context, const std::string& text, double height_mm, bool bold);

 private:
  std::map<std::string, _cairo_font_face*> faces_;  ///< by weight, and by the text where it is not plain
};

/// Text that Cairo will not refuse: broken UTF-8 becomes question marks, control characters spaces.
std::string printable(const std::string& text);

double text_width_mm(_cairo* context, Letters& letters, const std::string& text, double height_mm, bool bold);

void draw(_cairo* context, const Drawing& drawing, const Placement& placement, Letters& letters);

}  // namespace yardwright::cairo
