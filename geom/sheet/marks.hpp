// Marks made from site geometry: points, strokes, arrowheads and words of a plan, in site metres with the strokes
// and symbols in paper millimetres. A plan's y goes north, a symbol's y goes down the paper.
#pragma once

#include <string>
#include <vector>

#include "geom/shape/polygon.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/sheet/palette.hpp"

namespace yardwright {

using Marks = std::vector<Mark>;
using SymbolMarks = std::vector<std::variant<LineMark, AreaMark, CircleMark>>;

inline DrawPoint on_plan(SitePoint point) { return {point.x, point.y}; }
std::vector<DrawPoint> on_plan(const SitePath& path);

LineMark line(const SitePath& path, Stroke stroke);
LineMark ring(const SitePath& corners, Stroke stroke);
AreaMark area(const SitePath& corners, Colour fill);
/// A polygon's fill and its edge; either may be left out (alpha 0, width 0).
void add_polygon(Marks& marks, const Polygon& polygon, Colour fill, const Stroke& edge);
void add_region(Marks& marks, const Region& region, Colour fill, const Stroke& edge);
CircleMark circle(SitePoint centre, double radius_m, Colour fill, Stroke edge);

/// The strip of a drawn line, or nothing where it is still a lone point.
Region strip_of(const SitePath& path, double width_m);

/// An open arrowhead that points along `direction`, its tip at `at`.
SymbolMark arrowhead(SitePoint at, SiteVector direction, double size_mm, Stroke stroke);
/// A tick of a dimension line: a short slanted stroke across its end.
SymbolMark slanted_tick(SitePoint at, SiteVector direction, double size_mm, Stroke stroke);
/// A dot or ring of fixed size.
SymbolMark spot(SitePoint at, double radius_mm, Colour fill, Stroke stroke);

/// Words at a place, in the plan's usual ink with a halo of paper.
TextMark words(SitePoint at, std::string text, double height_mm, Colour colour, Anchor anchor = Anchor::middle);
/// The turn of words that run along a direction and still read from below or from the right.
double turn_along_deg(SiteVector direction);
/// The same mark in paler colours, for what is not there yet.
Mark faded(Mark mark, double part);

}  // namespace yardwright
