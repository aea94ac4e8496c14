// The column beside a plan, filled from its top: what the sheet is, its key, what is to mend; at its foot the scale,
// the north arrow and the title block.
#pragma once

#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_frame.hpp"

namespace yardwright {

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
  SheetColumn(SheetPen& pen, const SheetBox& box);

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
  double room_mm() const;
  double height_of(const Finding& finding, UnitSystem units) const;
  void finding(const Finding& finding, std::size_t number, UnitSystem units);

  SheetPen& pen_;
  double left_, width_, y_;
  SheetBox box_;
};

}  // namespace yardwright
