// Words of a plan before they have a place, the places that they may take, and what they should not cover. A label
// that finds no room beside what it names stands farther off with a leader line; none is dropped but one that says so
// (the level of a contour stands elsewhere too). Boxes and offsets are in paper millimetres, places in site metres.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "geom/shape/outline.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/sheet/palette.hpp"
#include "geom/site/item.hpp"

namespace yardwright {

struct LabelLine {
  std::string text;
  double height_mm = 2.0;
  Colour colour = palette::ink;
  bool bold = false;
};

/// A place that a label may take: the middle of its box, `offset_mm` right and down from `at`.
struct LabelSpot {
  SitePoint at;
  DrawVector offset_mm;
  double turn_deg = 0;  ///< clockwise on the paper
  double size = 1;      ///< of its letters, of the wanted size
  double cost = 0;      ///< how much worse than the best place
  bool leader = false;
};

struct Label {
  std::vector<LabelLine> lines;
  std::vector<LabelSpot> spots;  ///< cheapest first, at least one
  SitePoint names;               ///< where the leader line goes
  double names_radius_mm = 0;    ///< the leader ends this far from there
  ItemId owner;                  ///< what it may lie on
  Colour halo = palette::white.faded(0.75);
  std::optional<Colour> card;  ///< the edge of a card behind the words
  bool may_be_left_out = false;
  double strength = 1;  ///< paler where it is not built yet
};

/// What words should not cross or lie on.
struct Obstacle {
  std::variant<Disc, SitePath> shape;
  double weight = 6;     ///< against LabelSpot::cost
  bool solid = false;    ///< words inside it name something else; a path is then a ring
  double margin_mm = 0;  ///< a disc's radius on the paper, besides that on the site
  ItemId owner{};
};

/// The size of a label's box on the paper.
struct LabelSize {
  double width_mm = 0, height_mm = 0;
};
LabelSize size_of(const Label& label, double letter_size = 1);

/// Where the labels may go on the paper.
struct LabelPaper {
  double metres_per_mm = 0.5;
  std::optional<Box> window;  ///< site metres; words stay inside where they can
};

/// The labels' marks, each at the best place left. The same labels give the same places.
std::vector<Mark> placed_labels(const std::vector<Label>& labels, const std::vector<Obstacle>& obstacles,
                                const LabelPaper& paper);

}  // namespace yardwright
