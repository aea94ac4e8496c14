#include "editor/session/tool.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "editor/session/pad_level.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

bool joins(const Thing& thing) { return std::holds_alternative<Spout>(thing); }

Thing with_path(Thing thing, const SitePath& path) {
  std::visit(
      [&](auto& kind) {
        if constexpr (requires { kind.path; }) kind.path = path;
        if constexpr (requires { kind.outline; }) kind.outline = path;
      },
      thing);
  return thing;
}

bool covers(const Item& item, SitePoint at) {
  const auto solid = footprint(item.thing);
  const auto hole = pit_hole(item.thing);
  return (solid && contains(*solid, at)) || (hole && contains(*hole, at));
}

/// A conveyor, tunnel or the like goes from and to what its ends were clicked on.
Thing with_ends(Thing thing, const Site& site, const SitePath& path) {
  ItemId from, to;
  for (const Item& item : site.items) {
    if (covers(item, path.front())) from = item.id;
    if (covers(item, path.back())) to = item.id;
  }
  std::visit(
      [&](auto& kind) {
        if constexpr (std::is_same_v<decltype(kind), Conveyor&> || std::is_same_v<decltype(kind), Tunnel&>) {
          kind.from = from;
          kind.to = to;
        }
      },
      thing);
  return thing;
}

Item new_item(const Site& site, Thing thing, int phase) {
  Item item;
  item.id = next_id(site);
  item.name = fresh_name(site, thing);
  item.phase = phase;
  item.thing = std::move(thing);
  return item;
}

ToolStep added(const Tool& tool, const Site& site, Thing thing, int phase) {
  const Item item = new_item(site, std::move(thing), phase);
  Tool next = tool;
  next.points.clear();
  next.from = {};
  return {next, {PutItem{item}}, {item.id}, ""};
}

ToolStep unused(const Tool& tool, std::string notice) { return {tool, {}, {}, std::move(notice)}; }

/// One of the kind in hand that stands where the click went, as after a doubled click.
const Item* in_the_way(const Tool& tool, const Site& site, SitePoint at) {
  const auto stands_there = [&](const Item& item) {
    return item.thing.index() == tool.thing->index() && (covers(item, at) || place_of(item.thing) == at);
  };
  const auto found = std::ranges::find_if(site.items, stands_there);
  return found == site.items.end() ? nullptr : &*found;
}

/// The roof that a downspout at a place would hang on: the nearest within arm's reach of its wall, and a little more.
ItemId roof_at(const Site& site, SitePoint at) {
  constexpr double reach_m = 3;
  ItemId nearest;
  double least_m = reach_m;
  for (const Item& item : site.items) {
    const auto outline = footprint(item.thing);
    if (!outline || (as<Bin>(item) == nullptr && as<Dryer>(item) == nullptr && as<Building>(item) == nullptr)) continue;
    const double off_m = contains(*outline, at) ? 0 : nearest_pair(*outline, Disc{at, 0}).distance_m;
    if (off_m <= least_m) least_m = off_m, nearest = item.id;
  }
  return nearest;
}

ToolStep placed(const Tool& tool, const Site& site, const Click& click) {
  if (const Item* item = in_the_way(tool, site, click.at))
    return unused(tool, fmt::format("{} stands here; to move it, put the tool down with Escape.", title_of(*item)));
  Thing thing = *tool.thing;
  std::visit(
      [&](auto& kind) {
        if constexpr (requires { kind.at; }) kind.at = click.at;
      },
      thing);
  if (Downspout* downspout = std::get_if<Downspout>(&thing)) downspout->of = roof_at(site, click.at);
  return added(tool, site, std::move(thing), click.phase);
}

bool can_be_filled(const Thing& thing) {
  return std::holds_alternative<Bin>(thing) || std::holds_alternative<Dryer>(thing) ||
         std::holds_alternative<OverheadHolding>(thing);
}

ToolStep joined(const Tool& tool, const Site& site, const Click& click) {
  const Item* item = find(site, click.on);
  if (!tool.from) {
    if (item == nullptr || as<Leg>(*item) == nullptr) return unused(tool, "A spout begins at a leg: click the leg.");
    Tool next = tool;
    next.from = click.on;
    next.points = {place_of(item->thing)};
    return {next, {}, {}, ""};
  }
  if (item == nullptr || !can_be_filled(item->thing))
    return unused(tool, "A spout ends at a bin, a dryer or an overhead bin.");
  Spout spout = std::get<Spout>(*tool.thing);
  spout.from = tool.from;
  spout.to = click.on;
  const Bin* bin = as<Bin>(*item);
  if (as<Dryer>(*item) != nullptr || (bin != nullptr && bin->use == BinUse::wet_holding)) spout.state = GrainState::wet;
  return added(tool, site, spout, click.phase);
}

bool can_be_a_stop(const Thing& thing) {
  return std::holds_alternative<Gate>(thing) || std::holds_alternative<Scale>(thing) ||
         std::holds_alternative<Receiving>(thing) || std::holds_alternative<OverheadHolding>(thing);
}

/// A route stops at what is clicked along it; a double-click is one stop.
Tool with_stop(Tool tool, const Site& site, ItemId on) {
  const Item* item = find(site, on);
  if (!std::holds_alternative<Route>(*tool.thing) || item == nullptr || !can_be_a_stop(item->thing)) return tool;
  if (tool.stops.empty() || tool.stops.back() != on) tool.stops.push_back(on);
  return tool;
}

ToolStep with_point(const Tool& tool, SitePoint at) {
  Tool next = tool;
  if (next.points.empty() || distance(next.points.back(), at) > 0.01) next.points.push_back(at);
  return {next, {}, {}, ""};
}

std::size_t least_points(const Tool& tool) {
  if (tool.doing == Doing::lot || (tool.thing && is_ring(*tool.thing))) return 3;
  return 2;
}

bool takes_two(const Tool& tool) { return tool.doing == Doing::measure || tool.doing == Doing::fit; }
bool has_both(const Tool& tool) { return takes_two(tool) && tool.points.size() == 2; }

Tool without_points(Tool tool) {
  tool.points.clear();
  tool.stops.clear();
  return tool;
}

}  // namespace

Tool tool_for(Thing thing) {
  const bool drawn = path_of(thing) != nullptr;
  const Doing doing = joins(thing) ? Doing::join : drawn ? Doing::draw : Doing::place;
  return {doing, std::move(thing), {}, {}};
}

Tool lot_tool() { return {Doing::lot, {}, {}, {}}; }
Tool measure_tool() { return {Doing::measure, Thing{Dimension{}}, {}, {}}; }
Tool fit_tool(ItemId picture) { return {Doing::fit, {}, {}, picture}; }

ToolStep clicked(const Tool& tool, const Site& site, const Click& click) {
  switch (tool.doing) {
    case Doing::select: return {tool, {}, click.on ? Selection{click.on} : Selection{}, ""};
    case Doing::place: return placed(tool, site, click);
    case Doing::join: return joined(tool, site, click);
    case Doing::draw: return with_point(with_stop(tool, site, click.on), click.at);
    case Doing::lot: return with_point(tool, click.at);
    case Doing::measure:
    case Doing::fit: break;
  }
  // A third click begins anew.
  return with_point(has_both(tool) ? without_points(tool) : tool, click.at);
}

ToolStep finished(const Tool& tool, const Site& site, int phase) {
  if (tool.doing == Doing::fit) return {{}, {}, {tool.from}, ""};
  if (tool.points.size() < least_points(tool) || tool.doing == Doing::join) {
    return unused(tool, tool.points.empty() ? "" : fmt::format("At least {} points are needed.", least_points(tool)));
  }
  if (tool.doing == Doing::lot) {
    return {{}, {SetLot{{tool.points, std::vector<LotEdge>(tool.points.size(), LotEdge::neighbour)}}}, {}, ""};
  }
  Thing thing = with_ends(with_path(*tool.thing, tool.points), site, tool.points);
  if (Route* route = std::get_if<Route>(&thing)) route->stops = tool.stops;
  if (Pad* pad = std::get_if<Pad>(&thing)) pad->level_m = even_pad_level_m(site, *pad);
  return added(without_points(tool), site, std::move(thing), phase);
}

Tool cancelled(const Tool& tool) {
  if (tool.points.empty()) return {};
  Tool next = without_points(tool);
  if (tool.doing != Doing::fit) next.from = {};
  return next;
}

std::string instruction(const Tool& tool) {
  constexpr std::string_view down = "Escape puts the tool down";
  switch (tool.doing) {
    case Doing::select: return "";
    case Doing::place:
      return fmt::format("Click where the {} stands, and the next one; {}.", kind_label(*tool.thing), down);
    case Doing::join:
      if (tool.from) return "Click what the spout fills; Escape lets go of the leg.";
      return fmt::format("Click the leg that the spout comes from; {}.", down);
    case Doing::draw:
      return fmt::format("Click along the {}{}; Enter or a double-click ends it, {}.", kind_label(*tool.thing),
                         std::holds_alternative<Route>(*tool.thing) ? ", and its stops: gate, scale, dump" : "",
                         tool.points.empty() ? down : "Escape begins anew");
    case Doing::lot: return "Click the lot's corners; Enter or a double-click closes it.";
    case Doing::measure:
      if (has_both(tool)) return "Enter keeps it on the plan; click to measure anew.";
      return fmt::format("Click two points; {}.", tool.points.empty() ? down : "Escape begins anew");
    case Doing::fit:
      if (has_both(tool)) return "Type on the right what you know of A and B; Enter is done.";
      return tool.points.empty() ? "Click a point of the picture that you know."
                                 : "Click another one, far from the first.";
  }
  return "";
}

std::string fresh_name(const Site& site, const Thing& thing) {
  if (joins(thing) || std::holds_alternative<Dimension>(thing)) return "";
  std::string word{kind_label(thing)};
  word.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(word.front())));
  for (int number = 1;; ++number) {
    std::string name = fmt::format("{} {}", word, number);
    if (std::ranges::find(site.items, name, &Item::name) == site.items.end()) return name;
  }
}

}  // namespace yardwright::session
