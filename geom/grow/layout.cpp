#include "geom/grow/layout.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/drain/bin_checks.hpp"
#include "geom/grow/prover.hpp"
#include "geom/grow/spout_reach.hpp"

namespace yardwright::grow {

namespace {

constexpr const char* phase_name = "proposed";
constexpr int pad_rounds = 3;  // one pad's side can lie higher than the ground that its neighbour was to fall to

int last_phase(const Site& site) { return std::max(0, static_cast<int>(site.phases.size()) - 1); }

Bin model_of(const Site& site, const GrowthBrief& brief) {
  Bin model;
  for_each<Bin>(site, [&](const Item&, const Bin& bin) {
    if (bin.use == BinUse::dry_store) model = bin;
  });
  if (!brief.grain.empty()) model.grain = brief.grain;
  return model;
}

/// A bin of the layout, with the pad and the spout that it gets; numbered one after the other.
struct NewBin {
  Item pad, bin, spout;
  bool has_pad = false;
};

class Builder {
 public:
  Builder(const GrowthTask& task, const Layout& layout) : task_{task}, site_{with_legs(task, layout.discharge_m)} {
    ItemId next = task.first_new();
    const int phase = last_phase(task.whole) + 1;
    for (const Stand& stand : layout.stands) {
      const std::string name = fmt::format("New {}", bins_.size() + 1);
      Bin bin = task.bin_of(stand.size);
      bin.at = stand.at;
      bins_.push_back({{next, "Pad of " + name, phase, {}, Pad{}},
                       {ItemId{next.number + 1}, name, phase, {}, bin},
                       {ItemId{next.number + 2}, "", phase, {}, Spout{}},
                       false});
      next.number += 3;
    }
  }

  std::optional<Edits> build() {
    put_pads();
    if (!put_spouts()) return std::nullopt;
    Edits edits;
    for (const Item& leg : task_.legs) {
      const Item* now = find(site_, leg.id);
      if (*now != leg) edits.push_back(PutItem{*now});
    }
    std::vector<std::string> phases = task_.whole.phases;
    phases.push_back(phase_name);
    edits.push_back(SetPhases{std::move(phases)});
    for (const NewBin& one : bins_) put(edits, one);
    return edits;
  }

 private:
  void put(Edits& edits, const NewBin& one) const {
    if (one.has_pad) edits.push_back(PutItem{one.pad});
    edits.push_back(PutItem{one.bin});
    edits.push_back(PutItem{one.spout});
  }

  const Rule& fall_rule() const {
    const bool on_slab = task_.model.floor == BinFloor::flat_channels;
    return task_.catalogs.rules.at(on_slab ? "drain.slope-away-flat" : "drain.slope-away-raised");
  }

  /// Every bin stands before the first pad is shaped: where walls stand side by side no water is led.
  void put_pads() {
    if (!task_.answers.surface.known()) return;
    Site site = site_;
    for (const NewBin& one : bins_) site.items.push_back(one.bin);
    DesignSurface surface = task_.answers.surface;
    for (int round = 0; round < pad_rounds; ++round) {
      bool changed = false;
      for (NewBin& one : bins_) changed |= shaped(one, site, surface);
      if (!changed) return;
      Site padded = site;
      for (const NewBin& one : bins_) {
        if (one.has_pad) padded.items.push_back(one.pad);
      }
      surface = design_surface(padded);
    }
  }

  /// Whether a pad was put under it or made higher.
  bool shaped(NewBin& one, const Site& site, const DesignSurface& surface) const {
    const double grade = fall_rule().value;
    const drain::FallAway fall = drain::fall_away(site, one.bin, surface);
    if (fall.way.empty() || fall.grade_ratio >= grade) return false;
    const auto pad = drain::pad_that_falls_away(site, one.bin, surface, grade);
    if (!pad || (one.has_pad && pad->level_m <= as<Pad>(one.pad)->level_m)) return false;
    one.pad.thing = *pad;
    one.has_pad = true;
    return true;
  }

  /// The bin with its pad as a part of its foundation, so that it stands as high on the ground as it is.
  Bin lifted(const NewBin& one) const {
    Bin bin = *as<Bin>(one.bin);
    if (one.has_pad) bin.foundation_height_m += as<Pad>(one.pad)->level_m - task_.answers.surface.level_m(bin.at);
    return bin;
  }

  bool put_spouts() {
    for (NewBin& one : bins_) {
      const auto next = newcomer(site_, task_.answers, task_.catalogs.rules, lifted(one), one.bin.phase);
      const SitePoint at = place_of(one.bin.thing);
      if (is_under_a_spout(*next, at)) return false;
      const auto leg = leg_for(*next, at);
      if (!leg) return false;
      Item stands = one.bin;
      stands.thing = lifted(one);
      site_.items.push_back(std::move(stands));
      const double length_m = spout_to(*next, *as<Leg>(*find(site_, *leg)), at).length_m();
      one.spout.thing = Spout{.from = *leg,
                              .to = one.bin.id,
                              .state = grain_state(*next),
                              .supported = length_m > task_.catalogs.rules.at("reach.free-span").value};
      site_.items.push_back(one.spout);
    }
    return true;
  }

  const GrowthTask& task_;
  Site site_;  ///< with the legs raised; then with every bin that is filled so far
  std::vector<NewBin> bins_;
};

}  // namespace

GrowthTask::GrowthTask(Site all, GrowthBrief what, PriceBook prices, const Catalogs& catalogs_shipped)
    : whole{std::move(all)},
      site{as_of(whole, last_phase(whole))},
      brief{std::move(what)},
      book{std::move(prices)},
      shipped{catalogs_shipped},
      catalogs{in_force(site, shipped)},
      answers{check(site, shipped)},
      model{model_of(site, brief)} {
  for_each<Leg>(site, [&](const Item& item, const Leg&) { legs.push_back(item); });
}

Bin GrowthTask::bin_of(std::size_t size) const {
  Bin bin = model;
  bin.diameter_m = brief.bins[size].diameter_m;
  bin.eave_height_m = brief.bins[size].eave_height_m;
  return bin;
}

Layout GrowthTask::as_it_is() const {
  Layout layout;
  for (const Item& leg : legs) layout.discharge_m.push_back(as<Leg>(leg)->discharge_height_m);
  return layout;
}

Site with_legs(const GrowthTask& task, const std::vector<double>& discharge_m) {
  Site site = task.site;
  for (std::size_t i = 0; i < task.legs.size(); ++i) {
    for (Item& item : site.items) {
      Leg* leg = item.id == task.legs[i].id ? std::get_if<Leg>(&item.thing) : nullptr;
      if (leg == nullptr || leg->discharge_height_m == discharge_m[i]) continue;
      leg->discharge_height_m = discharge_m[i];
      leg->outlets = std::max(leg->outlets, task.brief.outlets);
    }
  }
  return site;
}

std::optional<Edits> built(const GrowthTask& task, const Layout& layout) { return Builder{task, layout}.build(); }

}  // namespace yardwright::grow
