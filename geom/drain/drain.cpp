#include "geom/drain/drain.hpp"

#include <algorithm>
#include <cmath>

#include "geom/drain/bin_checks.hpp"
#include "geom/drain/cover_map.hpp"
#include "geom/drain/diversion.hpp"
#include "geom/drain/idle_drains.hpp"
#include "geom/drain/outlines.hpp"
#include "geom/drain/pit_checks.hpp"
#include "geom/drain/pit_groundwater.hpp"
#include "geom/drain/raster.hpp"
#include "geom/drain/tile_checks.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

bool all_finite(const LevelGrid& levels) {
  return std::ranges::all_of(levels.values(), [](float level_m) { return std::isfinite(level_m); });
}

Finding ground_missing(const char* title, const char* why) {
  return not_checked(Question::drain, "drain.ground", {}, title, why);
}

/// From its lowest place to the rim of the ground.
SitePath way_out_of(const Depression& hollow, const Flow& flow) {
  std::vector<Cell> way = flow_path(flow, hollow.lowest);
  const auto rim = std::ranges::find_if(way, [&](Cell cell) { return on_rim(flow.frame, cell); });
  if (rim != way.end()) way.erase(rim + 1, way.end());
  return as_path(flow.frame, way);
}

Finding distribution_missing() {
  return not_checked(Question::drain, "drain.storm", {}, "How the storm's rain falls is not known",
                     "the peaks want it: choose one of the NRCS types, or type the storm's own distribution");
}

std::vector<Pond> ponds_of(const Flow& flow) {
  const auto cells = cells_by_depression(flow);
  std::vector<Pond> ponds;
  for (std::size_t number = 0; number < flow.depressions.size(); ++number) {
    const Depression& hollow = flow.depressions[number];
    if (!worth_showing(hollow)) continue;
    ponds.push_back({hollow, shore_of(flow, cells[number], hollow.spill_level_m), way_out_of(hollow, flow)});
  }
  return ponds;
}

void name_unknown_covers(Answer& answer, const CoverMap& covers, const Catalogs& catalogs) {
  for (const std::string& name : covers.unknown) {
    Finding finding = not_checked(Question::drain, "drain.cover", {}, "A ground cover is not known",
                                  "there is no cover \"" + name + "\"; choose one of " + names_of(catalogs.covers));
    finding.id += ":" + name;
    answer.findings.push_back(std::move(finding));
  }
}

/// A pipe or an inlet that carries nothing is told, for else it would look as if it did.
void name_idle_drains(Answer& answer, const Site& site, const DesignSurface& surface, const TileSystem& tiles) {
  for (const LeftOut& left : idle_drains(site, surface, tiles)) {
    const Item& item = *find(site, left.item);
    answer.findings.push_back(not_checked(Question::drain, "drain.pipes", {item.id},
                                          title_of(item) + " is not counted as carrying water", left.why));
    answer.findings.back().place = {place_of(item.thing)};
  }
}

void ask_pits(Answer& answer, const Site& site, const DesignSurface& surface, const CoverMap& covers,
              const ChannelMap& channels, const MassCurve& curve, const RuleBook& rules) {
  for (const Item& item : site.items) {
    if (pit_body(item.thing) == nullptr) continue;
    std::ranges::move(judge_groundwater(site, item, surface, rules), std::back_inserter(answer.findings));
    const auto water = covers.covers.empty()
                           ? std::nullopt
                           : pit_water(item, surface, answer.flow, covers, channels, site.storm, curve);
    if (!water) {
      answer.findings.push_back(not_checked(
          Question::drain, "drain.rim-freeboard", {item.id}, "Water around " + title_of(item) + " was not checked",
          covers.covers.empty() ? "the storm's ground cover is not known" : "it lies outside the known ground"));
      continue;
    }
    std::ranges::move(judge_pit(item, *water, rules, site.storm.yard_life_years), std::back_inserter(answer.findings));
    answer.pits.push_back(*water);
  }
}

void ask_bins(Answer& answer, const Site& site, const DesignSurface& surface, const RuleBook& rules,
              MendSearch& search) {
  for_each<Bin>(site, [&](const Item& item, const Bin& bin) {
    if (cell_at(answer.flow.frame, bin.at) == outside) {
      answer.findings.push_back(not_checked(Question::drain, "drain.slope-away-raised", {item.id},
                                            "The ground around " + title_of(item) + " was not checked",
                                            "it lies outside the known ground"));
      return;
    }
    std::ranges::move(judge_bin(site, item, surface, answer.flow, rules, search), std::back_inserter(answer.findings));
  });
}

}  // namespace

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Asking& asking) {
  if (!surface.known()) {
    return {{ground_missing("The ground is not known", "bring in its levels (yardwright ground, or the file menu)")}};
  }
  if (!all_finite(surface.design)) {
    return {{ground_missing("The ground has gaps", "import levels again without gaps, or fill them first")}};
  }
  const RuleBook rules = catalogs.rules.with(site.rule_overrides);
  Answer answer;
  const Flow none;
  answer.flow = yard_flow(site, surface, asking.before != nullptr ? asking.before->flow : none);
  answer.ponds = ponds_of(answer.flow);
  const CoverMap covers = cover_map(site, catalogs, answer.flow.frame);
  name_unknown_covers(answer, covers, catalogs);
  const TileSystem tiles = tile_system(site, surface);
  name_idle_drains(answer, site, surface, tiles);
  const ChannelMap channels = channel_map(site, surface);
  const MassCurve curve = curve_of(site.storm.type, site.storm.own_curve, catalogs.storms);
  if (!curve.known()) answer.findings.push_back(distribution_missing());
  ask_pits(answer, site, surface, covers, channels, curve, rules);
  if (!covers.covers.empty()) {
    const auto runoff = tile_runoff(site, tiles, answer.flow, covers, channels);
    std::ranges::move(judge_tiles(site, tiles, runoff, curve, rules), std::back_inserter(answer.findings));
  }
  MendSearch search = asking.search;
  ask_bins(answer, site, surface, rules, search);
  const auto ask_again = [&](const Site& changed) {
    return ask(changed, design_surface(changed), catalogs, {MendSearch{false}, &answer});
  };
  offer_diversions(answer, site, surface, rules, ask_again, search);
  answer.mends_sought = !search.left_some();
  if (answer.findings.empty()) {
    answer.findings.push_back(
        not_checked(Question::drain, "drain.ground", {}, "Nothing to keep dry yet", "place a bin or a pit"));
  }
  sort_by_need(answer.findings);
  return answer;
}

}  // namespace yardwright::drain
