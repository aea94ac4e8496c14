// How each kind of thing is drawn on the plan: one function a kind, found by overload, so that a kind without a
// drawing does not compile. Shapes are drawn layer by layer, words on top of them all.
#pragma once

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
  Marks words;
};

ItemMarks marks_of(const Bin& bin, const Scene& scene);
ItemMarks marks_of(const Leg& leg, const Scene& scene);
ItemMarks marks_of(const Dryer& dryer, const Scene& scene);
ItemMarks marks_of(const OverheadHolding& holding, const Scene& scene);
ItemMarks marks_of(const Receiving& receiving, const Scene& scene);
ItemMarks marks_of(const Conveyor& conveyor, const Scene& scene);
ItemMarks marks_of(const Spout& spout, const Scene& scene);
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
ItemMarks marks_of(const Cover& cover, const Scene& scene);
ItemMarks marks_of(const Picture& picture, const Scene& scene);
ItemMarks marks_of(const Dimension& dimension, const Scene& scene);

/// The lot's edges by kind, with their words.
ItemMarks lot_marks(const Lot& lot, const PlanStyle& style);

/// Name (bold) over a line of size, about a place and `apart_mm` from it; leaves out what is wider than `room_m`.
void add_label(ItemMarks& marks, const Scene& scene, SitePoint at, const std::string& size, double room_m, double apart_mm = 1.6);
/// The same under a box that has no room for words.
void add_label_under(ItemMarks& marks, const Scene& scene, const Polygon& box, const std::string& size);
/// One line of words along a path, at its middle and a little to its left.
void add_words_along(ItemMarks& marks, const SitePath& path, const std::string& text, Colour colour);
/// A pit of a leg, a receiving or its own: a dashed hole.
void add_hole(ItemMarks& marks, const Thing& thing);
/// Arrowheads along a path, about `spacing_mm` apart on the paper.
void add_arrows(ItemMarks& marks, const SitePath& path, const Scene& scene, double spacing_mm, const Stroke& stroke);

}  // namespace yardwright::plan
