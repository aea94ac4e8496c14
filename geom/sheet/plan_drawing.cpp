#include "geom/sheet/plan_drawing.hpp"

#include "geom/sheet/hillshade_mark.hpp"

#include <array>

#include "geom/sheet/plan_item.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright {

namespace {

constexpr double not_yet_built = 0.35;  ///< strength of what a later phase builds
constexpr int layers = 7;

/// Which kinds lie under which, from the ground up.
struct LayerOf {
  int operator()(const Picture&) const { return 0; }
  int operator()(const Cover&) const { return 1; }
  int operator()(const Pad&) const { return 1; }
  int operator()(const Berm&) const { return 2; }
  int operator()(const Swale&) const { return 2; }
  int operator()(const Drive&) const { return 2; }
  int operator()(const Culvert&) const { return 3; }
  int operator()(const Scale&) const { return 3; }
  int operator()(const Pit&) const { return 3; }
  int operator()(const Route&) const { return 3; }
  int operator()(const Conveyor&) const { return 5; }
  int operator()(const Spout&) const { return 5; }
  int operator()(const Leg&) const { return 6; }
  int operator()(const OverheadHolding&) const { return 6; }
  int operator()(const OverheadLine&) const { return 6; }
  int operator()(const Dimension&) const { return 6; }
  int operator()(const auto&) const { return 4; }
};
constexpr int lot_layer = 3;
constexpr int contour_layer = 1;  ///< over covers and pads, under everything built

void append(Marks& marks, Marks more, double strength) {
  for (Mark& mark : more) marks.push_back(strength < 1 ? faded(std::move(mark), strength) : std::move(mark));
}

Box joined(const Box& a, const Box& b) {
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)}, {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

/// Ends of a kind without a drawn path (a spout) are its joined items' own.
bool has_extent(const Thing& thing) { return !std::holds_alternative<Spout>(thing) && (path_of(thing) == nullptr || !path_of(thing)->empty()); }

}  // namespace

Drawing plan_drawing(const Site& site, const DesignSurface& surface, const PlanStyle& style) {
  std::array<Marks, layers> shapes;
  Marks words_on_top;
  plan::ItemMarks lot = plan::lot_marks(site.lot, style);
  append(shapes[lot_layer], std::move(lot.shapes), 1);
  append(words_on_top, std::move(lot.words), 1);
  for (const Item& item : site.items) {
    const plan::Scene scene{site, style, item};
    plan::ItemMarks marks = std::visit([&](const auto& kind) { return plan::marks_of(kind, scene); }, item.thing);
    const double strength = item.phase > style.built_phase ? not_yet_built : 1;
    append(shapes[static_cast<std::size_t>(std::visit(LayerOf{}, item.thing))], std::move(marks.shapes), strength);
    append(words_on_top, std::move(marks.words), strength);
  }
  Drawing drawing;
  if (style.hillshade) {
    if (auto shade = hillshade_mark(surface.design)) drawing.marks.push_back(std::move(*shade));
  }
  if (style.contours) append(shapes[contour_layer], contour_drawing(surface, style).marks, 1);
  for (Marks& layer : shapes) append(drawing.marks, std::move(layer), 1);
  append(drawing.marks, std::move(words_on_top), 1);
  return drawing;
}

Box extent_of(const Site& site) {
  std::optional<Box> box, of_pictures;
  const auto take = [&](const Box& more) { box = box ? joined(*box, more) : more; };
  if (!site.lot.corners.empty()) take(box_of(site.lot.corners));
  for (const Item& item : site.items) {
    if (as<Picture>(item) != nullptr) of_pictures = box_of(extent(item.thing));
    else if (has_extent(item.thing)) take(box_of(extent(item.thing)));
  }
  if (!box && !site.ground.levels.empty()) {
    const GridFrame& frame = site.ground.levels.frame();
    take({frame.south_west, frame.south_west + SiteVector{frame.columns * frame.cell_m, frame.rows * frame.cell_m}});
  }
  return box.value_or(of_pictures.value_or(Box{{0, 0}, {100, 60}}));
}

}  // namespace yardwright
