#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

Neighbourhood::Neighbourhood(const Flow& flow) : flow_{flow}, marks_(flow.frame.cells()) {
  const auto wide = static_cast<Cell>(flow.frame.columns);
  steps_ = {1, 1 - wide, -wide, -1 - wide, -1, wide - 1, wide, wide + 1};
  if (!marks_.empty()) mark_rim();
  const auto add = [&](Cell cell, Mark mark) { marks_[static_cast<std::size_t>(cell)] |= mark; };
  for (const Cell cell : flow.sinks) add(cell, sink);
  for (const Link& link : flow.links) {
    add(link.from, takes_in);
    add(link.to, gives_out);
  }
}

void Neighbourhood::mark_rim() {
  const GridFrame& frame = flow_.frame;
  const auto add = [&](int column, int row) { marks_[frame.offset({column, row})] |= rim; };
  for (int column = 0; column < frame.columns; ++column) {
    add(column, 0);
    add(column, frame.rows - 1);
  }
  for (int row = 0; row < frame.rows; ++row) {
    add(0, row);
    add(frame.columns - 1, row);
  }
}

}  // namespace yardwright::drain
