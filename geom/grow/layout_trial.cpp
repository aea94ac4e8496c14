#include "geom/grow/layout_trial.hpp"

#include <algorithm>
#include <cmath>

#include "geom/grow/prover.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/grain_volume.hpp"

namespace yardwright::grow {

namespace {

constexpr double safe_ratio = 1.0;  // twice what is asked: more is not told apart
const std::vector quick{Question::clear, Question::reach, Question::pace};
const std::vector slow{Question::turn, Question::drain};

double dry_m3(const pace::Answer& answer) {
  double sum = 0;
  for (const pace::GrainCapacity& one : answer.capacity) sum += one.dry.as_cubic_metres();
  return sum;
}

/// What goes but is not lost: of a leg that is raised the height that it has, and parts that were measured a little otherwise
/// on the ground before. The spouts of a raised leg are lost.
double price_of_kept(Quantities gone, const GrowthTask& task, const Layout& layout) {
  std::vector<ItemId> raised;
  for (std::size_t i = 0; i < task.legs.size(); ++i) {
    if (layout.discharge_m[i] != as<Leg>(task.legs[i])->discharge_height_m) raised.push_back(task.legs[i].id);
  }
  for (QuantityLine& line : gone.lines) {
    std::erase_if(line.parts, [&](const QuantityPart& part) {
      const Item* item = part.items.empty() ? nullptr : find(task.site, part.items.front());
      const Spout* spout = item == nullptr ? nullptr : as<Spout>(*item);
      return spout != nullptr && std::ranges::count(raised, spout->from) > 0;
    });
  }
  std::erase_if(gone.lines, [](const QuantityLine& line) { return line.parts.empty(); });
  return cost_of(gone, task.book).sum;
}

/// Whether the ground under something that stands is another one: a footing bared or a wall buried.
bool moves_ground(const Site& site, const DesignSurface& before, const DesignSurface& after) {
  constexpr double borne_m = 0.02;
  return std::ranges::any_of(site.items, [&](const Item& item) {
    if (!footprint(item.thing)) return false;
    const SitePoint at = place_of(item.thing);
    return std::abs(after.level_m(at) - before.level_m(at)) > borne_m;
  });
}

/// Counts are whole: to have just as many outlets as spouts is no risk.
bool is_measured(const Finding& finding) {
  return finding.verdict != Verdict::not_checked && finding.quantity != Quantity::count && finding.required != 0;
}

}  // namespace

LayoutTrials::LayoutTrials(const GrowthTask& task) : task_{task}, harm_{task_.checked()} {
  for (const Finding& finding : all_findings(task.answers)) {
    const auto [at, is_new] = margin_before_.try_emplace(finding.id, finding.margin);
    if (!is_new) at->second = std::min(at->second, finding.margin);
  }
}

Findings LayoutTrials::broken(const Answers& after, const std::vector<Question>& questions) const {
  Findings all;
  for (const Question question : questions) {
    Findings some = harm_.broken(findings_of(after, question));
    for (const Finding& finding : findings_of(after, question)) {
      if (is_worse_than_it_was(finding)) some.push_back(finding);
    }
    if (task_.brief.bears_advice) std::erase_if(some, [](const Finding& one) { return one.verdict != Verdict::fail; });
    std::ranges::move(some, std::back_inserter(all));
  }
  return all;
}

/// Of what was wanting before: short of what is asked by a tenth more than it was, or than is asked.
bool LayoutTrials::is_worse_than_it_was(const Finding& finding) const {
  constexpr double borne_ratio = 0.1;
  const auto was = margin_before_.find(finding.id);
  if (!is_wanting(finding) || was == margin_before_.end() || was->second >= 0) return false;
  const double borne = borne_ratio * std::max(std::abs(finding.required), -was->second);
  return finding.margin < was->second - borne;
}

double LayoutTrials::safety_of(const Answers& after) const {
  double least = safe_ratio;
  for (const Question question : {Question::reach, Question::turn, Question::clear}) {
    for (const Finding& finding : findings_of(after, question)) {
      if (!is_measured(finding)) continue;
      const auto was = margin_before_.find(finding.id);
      if (was != margin_before_.end() && was->second <= finding.margin) continue;
      least = std::min(least, finding.margin / std::abs(finding.required));
    }
  }
  return least;
}

void LayoutTrials::measure(LayoutTrial& trial, const Site& grown, const Answers& after) const {
  LayoutMeasures& measures = trial.measures;
  measures.stored_m3 = dry_m3(*after.pace) - dry_m3(*task_.answers.pace);
  const QuantityChange change =
      quantity_change({task_.site, task_.answers.surface}, {grown, after.surface}, task_.shipped);
  const Cost cost = cost_of(change.built, task_.book);
  measures.cost = cost.sum - price_of_kept(change.gone, task_, trial.layout);
  measures.without_price = cost.without_price;
  trial.moves_ground = moves_ground(task_.site, task_.answers.surface, after.surface);
  trial.too_dear = task_.brief.budget && measures.cost > *task_.brief.budget;
  for (std::size_t i = 0; i < task_.legs.size(); ++i)
    measures.raised_m += trial.layout.discharge_m[i] - as<Leg>(task_.legs[i])->discharge_height_m;
  for (const reach::CheckedSpout& spout : after.reach->spouts) {
    if (spout.spout >= task_.first_new()) measures.spouts_m += spout.line.length_m();
  }
}

LayoutTrial LayoutTrials::tried(const Layout& layout) const {
  LayoutTrial trial{layout, built(task_, layout).value_or(Edits{}), {}, {}, {}, false, false};
  if (trial.edits.empty()) return trial;
  const Site grown = yardwright::apply(task_.site, trial.edits);
  const Answers soon = answers_after(grown, task_.checked(), quick, MendSearch{false});
  trial.broken = broken(soon, quick);
  measure(trial, grown, soon);
  if (!trial.holds()) return trial;
  const Answers after = answers_after(grown, {grown, soon, task_.catalogs}, slow, MendSearch{false});
  trial.broken = broken(after, slow);
  trial.measures.safety_ratio = safety_of(after);
  return trial;
}

LayoutTrial LayoutTrials::tried_afresh(const Layout& layout) const {
  LayoutTrial trial{layout, built(task_, layout).value_or(Edits{}), {}, {}, {}, false, false};
  if (trial.edits.empty()) return trial;
  const Site grown = yardwright::apply(task_.site, trial.edits);
  const Answers after = check(grown, task_.shipped);
  trial.broken = broken(after, {every_question.begin(), every_question.end()});
  measure(trial, grown, after);
  trial.measures.safety_ratio = safety_of(after);
  for (const Finding& finding : all_findings(after)) {
    const bool is_about_it =
        finding.items.empty() || std::ranges::any_of(finding.items, [&](ItemId id) { return id >= task_.first_new(); });
    if (is_about_it && finding.verdict == Verdict::not_checked && finding.question != Question::grow)
      trial.not_checked.push_back(finding);
  }
  return trial;
}

Aims aims_of(const LayoutMeasures& measures, const GrowthBrief& brief) {
  constexpr double much_money = 1e6, much_height_m = 30, much_spout_m = 300;  // each aim by its own measure
  return {1 - std::min(1.0, measures.stored_m3 / brief.wanted_m3), measures.cost / brief.budget.value_or(much_money),
          1 - measures.safety_ratio, measures.raised_m / much_height_m, measures.spouts_m / much_spout_m};
}

bool meets(const LayoutMeasures& measures, const GrowthBrief& brief) {
  return measures.stored_m3 >= brief.wanted_m3 - cubic_metres_per_bushel;
}

}  // namespace yardwright::grow
