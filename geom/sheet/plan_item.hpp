// How each kind of thing is drawn on the plan: one function a kind, found by overload, so that a kind without a
// drawing does not compile. Shapes are drawn layer by layer, words on top of them all.
#pragma once

#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/plan_drawing.hpp"

namespace yardwright::plan {

/// What a kind's drawing may look at besides itself.
struct Scene {
  const Site& site;
  const PlanStyle& style;
  const Item& item;
};

struct ItemMarks {
  Marks shapes;
  std::vector<Label> labels;
};

ItemMarks marks_of(const Bin& bin, const Scene& scene);
ItemMarks marks_of(const Leg& leg, const Scene& scene);
ItemMarks marks_of(const Dryer& dryer, const Scene& scene);
ItemMarks marks_of(const OverheadHolding& holding, const Scene& scene);
ItemMarks marks_of(const Receiving& receiving, const Scene& scene);
ItemMarks marks_of(const Conveyor& conveyor, const Scene& scene);
ItemMarks marks_of(const Spout& spout, const Scene& scene);
ItemMarks marks_of(const Tunnel& tunnel, const Scene& scene);
ItemMarks marks_of(const Pit& pit, const Scene& scene);
ItemMarks marks_of(const Drive& drive, const Scene& scene);
ItemMarks marks_of(const Route& route, const Scene& scene);
ItemMarks marks_of(const Gate& gate, const Scene& scene);
ItemMarks marks_of(const Scale& scale, const Scene& scene);
ItemMarks marks_of(const Building& building, const Scene& scene);
ItemMarks marks_of(const Tank& tank, const Scene& scene);
ItemMarks marks_of(const Well& well, const Scene& scene);
ItemMarks marks_of(const OverheadLine& overhead, const Scene& scene);
ItemMarks marks_of(const Berm& berm, const Scene& scene);
ItemMarks marks_of(const Swale& swale, const Scene& scene);
ItemMarks marks_of(const Pad& pad, const Scene& scene);
ItemMarks marks_of(const Culvert& culvert, const Scene& scene);
ItemMarks marks_of(const RetainingWall& wall, const Scene& scene);
ItemMarks marks_of(const Curb& curb, const Scene& scene);
ItemMarks marks_of(const CatchBasin& basin, const Scene& scene);
ItemMarks marks_of(const TrenchDrain& drain, const Scene& scene);
ItemMarks marks_of(const TileLine& tile, const Scene& scene);
ItemMarks marks_of(const Downspout& downspout, const Scene& scene);
ItemMarks marks_of(const ReceivingDitch& ditch, const Scene& scene);
ItemMarks marks_of(const Cover& cover, const Scene& scene);
ItemMarks marks_of(const Picture& picture, const Scene& scene);
ItemMarks marks_of(const Dimension& dimension, const Scene& scene);

/// The lot's edges by kind, with their words.
ItemMarks lot_marks(const Lot& lot, const PlanStyle& style);
/// What no words should lie on: things that stand, spouts, lines, lot edges.
std::vector<Obstacle> obstacles_of(const Site& site);

/// Half of the box about an outline.
Around around(const Polygon& outline);
/// The item's name (bold) over its size, which may be empty.
Label name_and_size(const Scene& scene, const std::string& size);
/// The same, with places in or around a thing.
void add_label(ItemMarks& marks, const Scene& scene, const Around& thing, Prefer prefer, const std::string& size);
/// One line of words along a path, beside it.
void add_words_along(ItemMarks& marks, const PlanStyle& style, const SitePath& path, const std::string& text,
                     Colour colour);
/// The item's name and a size the same way.
void add_named_along(ItemMarks& marks, const Scene& scene, const SitePath& path, const std::string& size,
                     Colour colour);
/// One line of words anywhere within an area.
void add_words_within(ItemMarks& marks, const Scene& scene, const SitePath& outline, const std::string& text,
                      Colour colour);
/// A pit of a leg, a receiving or its own: a dashed hole.
void add_hole(ItemMarks& marks, const Thing& thing);
/// Arrowheads along a path, about `spacing_mm` apart on the paper.
void add_arrows(ItemMarks& marks, const SitePath& path, const Scene& scene, double spacing_mm, const Stroke& stroke);

}  // namespace yardwright::plan
