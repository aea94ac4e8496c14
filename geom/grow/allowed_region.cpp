#include "geom/grow/allowed_region.hpp"

#include <tbb/parallel_invoke.h>

#include <algorithm>
#include <limits>

#include "geom/grow/spout_reach.hpp"
#include "geom/shape/innermost.hpp"

namespace yardwright::grow {

namespace {

KeepOffs all_reasons(const Newcomer& newcomer) {
  KeepOffs stands, lines, ways, ground, spouts, reach;
  tbb::parallel_invoke([&] { stands = off_what_stands(newcomer); }, [&] { lines = off_lines(newcomer); },
                       [&] { ways = off_ways(newcomer); }, [&] { ground = off_wet_and_steep_ground(newcomer); },
                       [&] { spouts = off_spouts(newcomer); },
                       [&] { reach = off_reach(newcomer, leg_reaches(newcomer)); });
  KeepOffs all;
  for (KeepOffs* some : {&stands, &lines, &ways, &ground, &spouts, &reach})
    std::ranges::move(*some, std::back_inserter(all));
  return all;
}

/// The areas of the reasons as bad as `worse`, those left out that lie off the lot.
Region areas_of(const KeepOffs& reasons, Verdict worse, const Box& lot) {
  Region pieces;
  for (const KeepOff& one : reasons) {
    if (one.worse != worse) continue;
    for (const Polygon& piece : one.area) {
      if (gap_m(box_of(piece.outer), lot) <= 0) pieces.push_back(piece);
    }
  }
  return united(pieces);
}

/// Its pieces may overlap: only the edge of all of them together leads out.
AtPlace at_place(const KeepOff& reason, SitePoint place) {
  const Region whole = reason.area.size() > 1 ? united(reason.area) : reason.area;
  return {&reason, depth_within_m(whole, place), nearest_edge(whole, place).b};
}

/// Two of them so far apart keep their distance, whatever kind they are.
double apart_m(const Newcomer& newcomer) {
  const Box box = box_of(newcomer.shape);
  const double across_m = std::max(box.high.x - box.low.x, box.high.y - box.low.y);
  return across_m + newcomer.rules.at("clear.bin-bin").value;
}

}  // namespace

AllowedRegion allowed_region(const Newcomer& newcomer) {
  const Lot& lot = newcomer.site.lot;
  if (lot.corners.size() < 3) return {};
  AllowedRegion found{{}, {}, all_reasons(newcomer)};
  const Box box = box_of(lot.corners);
  Region failing, advised;
  tbb::parallel_invoke([&] { failing = areas_of(found.reasons, Verdict::fail, box); },
                       [&] { advised = areas_of(found.reasons, Verdict::caution, box); });
  found.bearable = without({Polygon{lot.corners, {}}}, failing);
  found.free = without(found.bearable, advised);
  return found;
}

std::vector<AtPlace> reasons_at(const AllowedRegion& region, SitePoint place) {
  std::vector<AtPlace> all;
  for (const KeepOff& reason : region.reasons) {
    if (contains(reason.area, place)) all.push_back(at_place(reason, place));
  }
  std::ranges::stable_sort(all, std::greater{}, &AtPlace::inside_m);
  return all;
}

std::vector<AtPlace> nearest_reasons(const AllowedRegion& region, SitePoint place, std::size_t most) {
  std::vector<AtPlace> all;
  for (const KeepOff& reason : region.reasons) {
    if (!reason.area.empty() && !contains(reason.area, place)) all.push_back(at_place(reason, place));
  }
  std::ranges::stable_sort(all, std::greater{}, &AtPlace::inside_m);
  if (all.size() > most) all.resize(most);
  return all;
}

std::vector<Spot> best_spots(const Newcomer& newcomer, const AllowedRegion& region, std::size_t most) {
  const bool free = !region.free.empty();
  Region left = free ? region.free : region.bearable;
  std::vector<Spot> spots;
  while (spots.size() < most) {
    const auto inner = innermost(left);
    if (!inner) break;
    spots.push_back({inner->at, depth_within_m(free ? region.free : region.bearable, inner->at), free});
    left = without(left, {around_disc(inner->at, apart_m(newcomer))});
  }
  std::ranges::stable_sort(spots, std::greater{}, &Spot::margin_m);
  return spots;
}

Edits placed_at(const Newcomer& newcomer, SitePoint place) {
  Item item = newcomer.item;
  item.thing = newcomer.at(place);
  Edits edits{PutItem{item}};
  const auto leg = leg_for(newcomer, place);
  if (!is_filled_by_spout(item.thing) || !leg) return edits;
  const Spout spout{.from = *leg, .to = item.id, .state = grain_state(newcomer)};
  edits.push_back(PutItem{Item{ItemId{item.id.number + 1}, "", item.phase, {}, spout}});
  return edits;
}

}  // namespace yardwright::grow
