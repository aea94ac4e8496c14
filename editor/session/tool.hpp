// What a click on the plan does, by the tool in hand. Tools are values and their steps pure: a step takes the tool,
// the site and a click, and returns the tool as it goes on, the edits to do and what is then selected. A tool stays in
// hand until Escape or another tool; only the lot and a picture's fit, of which there is one, put themselves down.
#pragma once

#include <optional>

#include "editor/session/selection_edits.hpp"
#include "geom/site/edit.hpp"

namespace yardwright::session {

enum class Doing : std::uint8_t {
  select,   ///< pick, drag, box select
  place,    ///< one click puts a thing
  draw,     ///< clicks make a line or an outline
  join,     ///< click the leg, then what it fills
  lot,      ///< clicks make the lot's corners
  measure,  ///< two clicks; may stay as a dimension
  fit,      ///< two clicks in a picture, of which something is known
};

struct Tool {
  Doing doing = Doing::select;
  std::optional<Thing> thing;  ///< what is placed, drawn or joined
  SitePath points;             ///< clicked so far
  ItemId from;                 ///< where a joining began; the picture that is fitted
  std::vector<ItemId> stops;   ///< clicked along a route: gates, the scale, the dump
  bool operator==(const Tool&) const = default;
};

struct Click {
  SitePoint at;   ///< snapped
  ItemId on;      ///< the item under the pointer, if any
  int phase = 0;  ///< that is shown: what the click makes is built in it
};

struct ToolStep {
  Tool tool;
  Edits edits;
  Selection selection;
  std::string notice;  ///< a sentence where the click could not be used
};

/// The tool that puts a kind of thing on the plan.
Tool tool_for(Thing thing);
Tool lot_tool();
Tool measure_tool();
Tool fit_tool(ItemId picture);

ToolStep clicked(const Tool& tool, const Site& site, const Click& click);
/// Enter or double-click: what was drawn becomes an item, where it has enough points.
ToolStep finished(const Tool& tool, const Site& site, int phase = 0);
/// Escape: first the points go, then the tool.
Tool cancelled(const Tool& tool);

/// What to do next, in a sentence.
std::string instruction(const Tool& tool);

/// A name for a new item of this kind: "Bin 3". Spouts, dimensions and the like have none.
std::string fresh_name(const Site& site, const Thing& thing);

}  // namespace yardwright::session
