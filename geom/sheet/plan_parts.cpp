#include "geom/sheet/plan_parts.hpp"

#include <iterator>

namespace yardwright {

namespace {

template <class T>
void append(std::vector<T>& to, std::vector<T> from) {
  to.insert(to.end(), std::make_move_iterator(from.begin()), std::make_move_iterator(from.end()));
}

}  // namespace

void add(PlanParts& parts, PlanParts more) {
  append(parts.shapes, std::move(more.shapes));
  append(parts.labels, std::move(more.labels));
  append(parts.obstacles, std::move(more.obstacles));
}

Drawing with_labels(PlanParts parts, const LabelPaper& paper) {
  Drawing drawing{std::move(parts.shapes)};
  append(drawing.marks, placed_labels(parts.labels, parts.obstacles, paper));
  return drawing;
}

}  // namespace yardwright
