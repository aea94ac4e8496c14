// Tables for the sheets: words are wrapped in their columns and rows flow over as many pages as they need, with the
// heading repeated; nothing is cut off.
#pragma once

#include "geom/sheet/sheet_pen.hpp"

namespace yardwright {

struct TableCell {
  std::string text;
  bool bold = false;
  Colour colour = palette::ink;
  std::optional<Verdict> verdict;  ///< its symbol before the words
};

struct TableColumn {
  std::string title;
  double share = 1;  ///< of the width, relative to the other columns
  Anchor anchor = Anchor::left;
};

struct Table {
  std::string title;
  std::string note;  ///< a quiet line under the title
  std::vector<TableColumn> columns;
  std::vector<std::vector<TableCell>> rows;
  double letter_mm = 2.2;  ///< height of the cells' letters
};

/// One drawing for each page, all within `box`.
std::vector<Drawing> flow_tables(const std::vector<Table>& tables, const SheetBox& box, const TextMeasure& measure);

}  // namespace yardwright
