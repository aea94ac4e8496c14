#include "geom/sheet/sheet_table.hpp"

#include <algorithm>
#include <numeric>

namespace yardwright {

namespace {

const TextStyle title_style{3.4, palette::ink, true, Anchor::left};
const TextStyle note_style{2.2, palette::quiet_ink, false, Anchor::left};
const TextStyle heading_style{1.9, palette::quiet_ink, true, Anchor::left};
constexpr double row_gap_ratio = 0.64;  ///< of the letters' height
constexpr double column_gap_mm = 2.5;
constexpr double table_gap_mm = 7;
constexpr double symbol_room_mm = 4;

/// A row as it is set: the lines of each cell.
struct SetRow {
  const std::vector<TableCell>& cells;
  std::vector<std::vector<std::string>> lines;
  std::size_t line_count() const {
    std::size_t count = 1;
    for (const auto& cell : lines) count = std::max(count, cell.size());
    return count;
  }
};

class Flow {
 public:
  Flow(const SheetBox& box, const TextMeasure& measure) : box_{box}, measure_{measure}, pen_{measure}, y_{box.low.y} {}

  void add(const Table& table) {
    letter_mm_ = table.letter_mm;
    place_columns(table);
    begin_table(table);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
      keep_with_last(table, row);
      add_row(table, table.rows[row]);
    }
    y_ += table_gap_mm;
  }

  std::vector<Drawing> finish() {
    pages_.push_back(pen_.take());
    return std::move(pages_);
  }

 private:
  TextStyle style_of(const TableCell& cell) const { return {letter_mm_, cell.colour, cell.bold, Anchor::left}; }
  double line_mm() const { return pen_.line_height_mm({letter_mm_}); }
  double row_gap_mm() const { return letter_mm_ * row_gap_ratio; }
  double room_mm() const { return box_.high.y - y_; }
  double width_mm(std::size_t column) const { return edges_[column + 1] - edges_[column] - column_gap_mm; }

  double text_x(const TableColumn& shape, std::size_t column) const {
    return shape.anchor == Anchor::right ? edges_[column + 1] - column_gap_mm : edges_[column];
  }

  void place_columns(const Table& table) {
    const double shares = std::accumulate(table.columns.begin(), table.columns.end(), 0.0,
                                          [](double sum, const TableColumn& column) { return sum + column.share; });
    edges_ = {box_.low.x};
    for (const TableColumn& column : table.columns)
      edges_.push_back(edges_.back() + column.share / shares * box_.width_mm());
  }

  /// A title with nothing or but one of several rows under it helps nobody.
  void begin_table(const Table& table) {
    constexpr double heading_mm = 14;
    const double wanted_mm = heading_mm + height_mm(table, 0, std::min<std::size_t>(2, table.rows.size()));
    if (room_mm() < wanted_mm && y_ > box_.low.y) next_page();
    if (!table.title.empty()) y_ = pen_.paragraph({box_.low.x, y_}, table.title, box_.width_mm(), title_style) + 0.8;
    if (!table.note.empty()) y_ = pen_.paragraph({box_.low.x, y_}, table.note, box_.width_mm(), note_style) + 0.8;
    add_heading(table);
  }

  void continue_table(const Table& table) {
    if (!table.title.empty())
      y_ = pen_.paragraph({box_.low.x, y_}, table.title + ", continued", box_.width_mm(), note_style) + 0.8;
    add_heading(table);
  }

  void add_heading(const Table& table) {
    double bottom = y_;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
      if (table.columns[i].title.empty()) continue;
      TextStyle style = heading_style;
      style.anchor = table.columns[i].anchor;
      bottom = std::max(
          bottom, pen_.paragraph({text_x(table.columns[i], i), y_ + 0.6}, table.columns[i].title, width_mm(i), style));
    }
    y_ = bottom + 0.6;
    pen_.line({box_.low.x, y_}, {box_.high.x, y_}, {palette::ink, 0.3, {}});
    y_ += row_gap_mm() / 2;
  }

  SetRow set(const std::vector<TableCell>& cells) const {
    SetRow row{cells, {}};
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const double room = width_mm(i) - (cells[i].verdict ? symbol_room_mm : 0);
      row.lines.push_back(measure_.wrapped(cells[i].text, letter_mm_, room, cells[i].bold));
    }
    return row;
  }

  double height_mm(const SetRow& row) const { return static_cast<double>(row.line_count()) * line_mm() + row_gap_mm(); }

  double height_mm(const Table& table, std::size_t first, std::size_t count) const {
    double sum_mm = 0;
    for (std::size_t row = first; row < first + count; ++row) sum_mm += height_mm(set(table.rows[row]));
    return sum_mm;
  }

  /// The last row takes the one before it along to its page.
  void keep_with_last(const Table& table, std::size_t row) {
    if (row == 0 || row + 2 != table.rows.size() || is_fresh()) return;
    if (height_mm(table, row, 1) > room_mm() || height_mm(table, row, 2) <= room_mm()) return;
    next_page();
    continue_table(table);
  }

  /// Little more than a heading stands on the page.
  bool is_fresh() const { return y_ < box_.low.y + 20; }

  void add_row(const Table& table, const std::vector<TableCell>& cells) {
    const SetRow row = set(cells);
    for (std::size_t first = 0; first < row.line_count();) {
      const double wanted_mm = static_cast<double>(row.line_count() - first) * line_mm() + row_gap_mm();
      if (wanted_mm > room_mm() && !is_fresh()) {
        next_page();
        continue_table(table);
        continue;
      }
      const auto fitting = static_cast<std::size_t>(std::max(1.0, (room_mm() - row_gap_mm()) / line_mm()));
      const std::size_t count = std::min(row.line_count() - first, fitting);
      draw_lines(table, row, first, count);
      first += count;
    }
  }

  void draw_lines(const Table& table, const SetRow& row, std::size_t first, std::size_t count) {
    for (std::size_t column = 0; column < row.cells.size(); ++column)
      draw_cell(table.columns[column], row, column, first, count);
    y_ += static_cast<double>(count) * line_mm() + row_gap_mm();
    pen_.line({box_.low.x, y_ - row_gap_mm() / 2}, {box_.high.x, y_ - row_gap_mm() / 2},
              {palette::rule_line, 0.15, {}});
  }

  void draw_cell(const TableColumn& shape, const SetRow& row, std::size_t column, std::size_t first,
                 std::size_t count) {
    const TableCell& cell = row.cells[column];
    double x = text_x(shape, column);
    if (cell.verdict) {
      if (first == 0) pen_.symbol({x + 1.6, y_ + line_mm() / 2}, symbol_of(*cell.verdict));
      x += symbol_room_mm;
    }
    TextStyle style = style_of(cell);
    style.anchor = shape.anchor;
    const auto& lines = row.lines[column];
    for (std::size_t i = first; i < std::min(lines.size(), first + count); ++i) {
      pen_.words({x, y_ + (static_cast<double>(i - first) + 0.5) * line_mm()}, lines[i], style);
    }
  }

  void next_page() {
    pages_.push_back(pen_.take());
    pen_ = SheetPen{measure_};
    y_ = box_.low.y;
  }

  SheetBox box_;
  const TextMeasure& measure_;
  SheetPen pen_;
  double y_;
  double letter_mm_ = 2.2;
  std::vector<double> edges_;
  std::vector<Drawing> pages_;
};

}  // namespace

std::vector<Drawing> flow_tables(const std::vector<Table>& tables, const SheetBox& box, const TextMeasure& measure) {
  Flow flow{box, measure};
  for (const Table& table : tables) flow.add(table);
  return flow.finish();
}

}  // namespace yardwright
