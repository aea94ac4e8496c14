#include <fmt/format.h>

#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

Stroke edge_stroke(LotEdge edge) {
  switch (edge) {
    case LotEdge::road: return {palette::ink, 0.7, {9, 1.4, 1.2, 1.4}};
    case LotEdge::own_field: return {palette::ink, 0.35, {4, 1.6}};
    case LotEdge::neighbour: break;
  }
  return {palette::ink, 0.5, {7, 1.4, 1.2, 1.4, 1.2, 1.4}};
}

std::string_view edge_words(LotEdge edge) {
  switch (edge) {
    case LotEdge::road: return "road";
    case LotEdge::own_field: return "own field";
    case LotEdge::neighbour: break;
  }
  return "neighbour";
}

}  // namespace

ItemMarks lot_marks(const Lot& lot, const PlanStyle& style) {
  ItemMarks marks;
  const std::size_t count = lot.corners.size();
  if (count < 2) return marks;
  for (std::size_t i = 0; i < count; ++i) {
    const SitePoint from = lot.corners[i], to = lot.corners[(i + 1) % count];
    const LotEdge kind = i < lot.edges.size() ? lot.edges[i] : LotEdge::neighbour;
    marks.shapes.push_back(line({from, to}, edge_stroke(kind)));
    if (!style.labels) continue;
    add_words_along(
        marks, style, {from, to},
        fmt::format("{} · {}", edge_words(kind), short_text_of(distance(from, to), Quantity::length, style.units)),
        palette::quiet_ink);
  }
  for (const SitePoint corner : lot.corners) {
    marks.shapes.push_back(spot(corner, 0.8, palette::paper, {palette::ink, 0.35, {}}));
  }
  return marks;
}

}  // namespace yardwright::plan
