// The column beside a plan, or the panels below it, filled from the top: what the sheet is, its key, what is to mend; at
// the foot of the last one the scale, the north arrow and the title block.
#pragma once

#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_frame.hpp"

namespace yardwright {

inline constexpr double north_and_scale_mm = 24;  ///< over the title block

/// A sample of how something is drawn, within 5 mm to the right of (0, 0), and its words.
struct KeyRow {
  SymbolMarks sample;
  std::string words;
};
/// A line's sample.
KeyRow key_of_line(const Stroke& stroke, std::string words);
/// An area's.
KeyRow key_of_area(Colour fill, const Stroke& edge, std::string words);

class SheetColumn {
 public:
  /// Words flow from one panel to the next.
  SheetColumn(SheetPen& pen, std::vector<SheetBox> panels);

  void title(const std::string& loud, const std::string& quiet);
  void heading(const std::string& text);
  void paragraph(const std::string& text);
  void key(const std::vector<KeyRow>& rows);
  /// Every question with its worst verdict and the sheet on which it is drawn; 0 for none.
  void questions(const Findings& findings, const std::vector<int>& sheets);
  /// The kinds on this plan, in two columns, with their icons as large as the room allows.
  void legend(const Site& site);
  /// What fails and what wants a look, as many as there is room for; `rest` says where the others are.
  void findings_of(Question question, const Findings& findings, UnitSystem units, const std::string& rest);
  void foot(const SheetTitle& title, double metres_per_mm, UnitSystem units);

 private:
  void begin_panel(std::size_t panel);
  /// Goes on in the next panel where a block of this height has no room here.
  void make_room(double height_mm);
  double room_mm() const;
  /// The lines that words take.
  double height_of(const std::string& text, double width_mm, const TextStyle& style) const;
  double height_of(const Finding& finding, UnitSystem units) const;
  void finding(const Finding& finding, std::size_t number, UnitSystem units);

  SheetPen& pen_;
  std::vector<SheetBox> panels_;
  std::size_t panel_ = 0;
  double left_ = 0, width_ = 0, y_ = 0;
};

}  // namespace yardwright
