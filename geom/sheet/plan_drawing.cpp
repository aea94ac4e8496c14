#include "geom/sheet/plan_drawing.hpp"

#include <array>

#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/plan_parts.hpp"
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
  int operator()(const ReceivingDitch&) const { return 2; }
  int operator()(const TileLine&) const { return 3; }
  int operator()(const TrenchDrain&) const { return 3; }
  int operator()(const CatchBasin&) const { return 3; }
  int operator()(const Curb&) const { return 3; }
  int operator()(const Scale&) const { return 3; }
  int operator()(const Pit&) const { return 3; }
  int operator()(const Tunnel&) const { return 3; }
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

void append(std::vector<Label>& labels, std::vector<Label> more, double strength) {
  for (Label& label : more) {
    label.strength = strength;
    labels.push_back(std::move(label));
  }
}

Box joined(const Box& a, const Box& b) {
  return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
          {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

/// Ends of a kind without a drawn path (a spout) are its joined items' own.
bool has_extent(const Thing& thing) {
  return !std::holds_alternative<Spout>(thing) && (path_of(thing) == nullptr || !path_of(thing)->empty());
}

PlanParts ground_parts(const DesignSurface& surface, const PlanStyle& style) {
  const auto shape =
      style.ground ? style.ground : std::make_shared<const GroundShape>(ground_shape(surface, style.units));
  PlanParts parts;
  if (style.contours)
    parts = contour_parts(shape->contours, style, {palette::contour, palette::index_contour, palette::earth, {}});
  if (style.hillshade && shape->shade) parts.shapes.push_back(*shape->shade);
  return parts;
}

}  // namespace

PlanParts plan_parts(const Site& site, const DesignSurface& surface, const PlanStyle& style) {
  std::array<Marks, layers> shapes;
  PlanParts parts;
  plan::ItemMarks lot = plan::lot_marks(site.lot, style);
  append(shapes[lot_layer], std::move(lot.shapes), 1);
  for (const Item& item : site.items) {
    const plan::Scene scene{site, style, item};
    plan::ItemMarks marks = std::visit([&](const auto& kind) { return plan::marks_of(kind, scene); }, item.thing);
    const double strength = item.phase > style.built_phase ? not_yet_built : 1;
    append(shapes[static_cast<std::size_t>(std::visit(LayerOf{}, item.thing))], std::move(marks.shapes), strength);
    append(parts.labels, std::move(marks.labels), strength);
  }
  append(parts.labels, std::move(lot.labels), 1);
  if (style.hillshade || style.contours) {
    PlanParts ground = ground_parts(surface, style);
    append(parts.labels, std::move(ground.labels), 1);
    for (Mark& mark : ground.shapes) {
      const bool is_shade = std::holds_alternative<PictureMark>(mark);
      (is_shade ? parts.shapes : shapes[contour_layer]).push_back(std::move(mark));
    }
  }
  for (Marks& layer : shapes) append(parts.shapes, std::move(layer), 1);
  parts.obstacles = plan::obstacles_of(site);
  return parts;
}

Drawing plan_drawing(const Site& site, const DesignSurface& surface, const PlanStyle& style) {
  return with_labels(plan_parts(site, surface, style), {style.metres_per_mm, {}});
}

Box extent_of(const Site& site) {
  std::optional<Box> box, of_pictures;
  const auto take = [&](const Box& more) { box = box ? joined(*box, more) : more; };
  if (!site.lot.corners.empty()) take(box_of(site.lot.corners));
  for (const Item& item : site.items) {
    if (as<Picture>(item) != nullptr)
      of_pictures = box_of(extent(item.thing));
    else if (has_extent(item.thing))
      take(box_of(extent(item.thing)));
  }
  if (!box && !site.ground.levels.empty()) {
    const GridFrame& frame = site.ground.levels.frame();
    take({frame.south_west, frame.south_west + SiteVector{frame.columns * frame.cell_m, frame.rows * frame.cell_m}});
  }
  return box.value_or(of_pictures.value_or(Box{{0, 0}, {100, 60}}));
}

}  // namespace yardwright
