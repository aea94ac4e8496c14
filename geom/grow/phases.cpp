#include "geom/grow/phases.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "geom/grow/hindrances.hpp"
#include "geom/grow/prover.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

constexpr std::string_view none = "–";

std::vector<ItemId> items_of_one_alone(const Site& site, const Site& other) {
  std::vector<ItemId> all;
  for (const Item& item : site.items) {
    if (find(other, item.id) == nullptr) all.push_back(item.id);
  }
  return all;
}

/// A leg where a leg was, a way or a conveyor where the same was: drawn anew, because a thing has one height in all phases.
bool is_drawn_anew(const Item& gone, const Site& after) {
  return std::ranges::any_of(after.items, [&](const Item& item) {
    if (item.thing.index() != gone.thing.index() || item.id == gone.id) return false;
    if (as<Leg>(item) != nullptr) return distance(place_of(item.thing), place_of(gone.thing)) < 0.01;
    const SitePath* path = path_of(item.thing);
    return path != nullptr && *path == *path_of(gone.thing);
  });
}

double price_of_kept(Quantities gone, const Site& before, const Site& after, const PriceBook& book) {
  for (QuantityLine& line : gone.lines) {
    std::erase_if(line.parts, [&](const QuantityPart& part) {
      const Item* item = part.items.size() != 1 ? nullptr : find(before, part.items.front());
      return item == nullptr || find(after, item->id) != nullptr || !is_drawn_anew(*item, after);
    });
  }
  std::erase_if(gone.lines, [](const QuantityLine& line) { return line.parts.empty(); });
  return cost_of(gone, book).sum;
}

Findings wanting_of(const Answers& answers) {
  Findings all = all_findings(answers);
  std::erase_if(all, [](const Finding& one) { return !is_wanting(one); });
  return all;
}

/// Grow is of what comes next, so that what it wants is never this phase's harm.
Findings without_growth(Findings findings) {
  std::erase_if(findings, [](const Finding& one) { return one.question == Question::grow; });
  return findings;
}

Findings settled_between(const Answers& before, const Answers& after) {
  const Findings still = wanting_of(after);
  Findings settled = without_growth(wanting_of(before));
  std::erase_if(settled, [&](const Finding& one) { return std::ranges::count(still, one.id, &Finding::id) > 0; });
  return settled;
}

PhaseStep first_step(const Option& option, const PriceBook& book) {
  PhaseStep step{.built = items_of_one_alone(option.site, {}), .change = {option.all, {}}};
  step.cost = cost_of(step.change.built, book);
  step.broken = without_growth(wanting_of(option.answers));
  return step;
}

PhaseStep step_between(const Option& before, const Option& after, int phase, const PriceBook& book,
                       const Catalogs& shipped) {
  const Catalogs rules = in_force(after.site, shipped);
  PhaseStep step{.phase = phase,
                 .built = items_of_one_alone(after.site, before.site),
                 .gone = items_of_one_alone(before.site, after.site)};
  step.change = quantity_change({before.site, before.answers.surface}, {after.site, after.answers.surface}, shipped);
  step.cost = cost_of(step.change.built, book);
  step.kept = price_of_kept(step.change.gone, before.site, after.site, book);
  step.broken = without_growth(Harm{{before.site, before.answers, rules}}.broken(all_findings(after.answers)));
  std::erase_if(step.broken, [](const Finding& one) { return !is_wanting(one); });
  step.settled = settled_between(before.answers, after.answers);
  step.hindrances = hindrances_of({after.site, after.answers, rules}, phase, step.broken);
  return step;
}

/// Names, but not of what is only a part: "2 bins", "North 3, Leg".
std::string things_words(const Site& site, const std::vector<ItemId>& items) {
  constexpr std::size_t most = 3;
  std::vector<std::string> names;
  std::size_t parts = 0;
  for (const ItemId id : items) {
    const Item* item = find(site, id);
    item->name.empty() || names.size() == most ? void(++parts) : names.push_back(title_of(*item));
  }
  if (items.empty()) return std::string{none};
  if (names.empty()) return fmt::format("{} thing{}", parts, parts == 1 ? "" : "s");
  return fmt::format("{}{}", fmt::join(names, ", "), parts > 0 ? fmt::format(" and {} more", parts) : "");
}

std::string paid_words(const PhaseStep& step, const PriceBook& book) {
  if (step.cost.lines.empty()) return std::string{none};
  Cost paid = step.cost;
  paid.sum = step.paid();
  return total_words(paid, book);
}

std::string wants_words(const PhaseStep& step) {
  const auto fails = std::ranges::count(step.broken, Verdict::fail, &Finding::verdict);
  return fmt::format("{} / {}", fails, static_cast<std::ptrdiff_t>(step.broken.size()) - fails);
}

}  // namespace

PhasePlan phases_of(const Site& whole, const PriceBook& book, const Catalogs& catalogs) {
  std::vector<Version> versions;
  for (const std::string& name : whole.phases) versions.push_back({name, whole, static_cast<int>(versions.size())});
  PhasePlan plan{compare(versions, book, catalogs), {}};
  const std::vector<Option>& options = plan.comparison.options;
  for (std::size_t i = 0; i < options.size(); ++i)
    plan.steps.push_back(i == 0 ? first_step(options[i], book)
                                : step_between(options[i - 1], options[i], static_cast<int>(i), book, catalogs));
  return plan;
}

std::vector<ComparedRow> phase_rows(const PhasePlan& plan, const Catalogs& catalogs) {
  const std::vector<Option>& options = plan.comparison.options;
  const PriceBook& book = plan.comparison.book;
  ComparedRow built{"builds", {}}, gone{"takes away", {}}, wants{"newly fails / wants caution", {}};
  ComparedRow paid{std::string{"costs"} + (book.invented ? ", invented prices" : ""), {}};
  for (const PhaseStep& step : plan.steps) {
    const auto at = static_cast<std::size_t>(step.phase);
    built.cells.push_back({things_words(options[at].site, step.built), {}, {}});
    gone.cells.push_back({at == 0 ? std::string{none} : things_words(options[at - 1].site, step.gone), {}, {}});
    paid.cells.push_back({paid_words(step, book), {}, {}});
    wants.cells.push_back({wants_words(step), {}, {}});
  }
  std::vector<ComparedRow> rows{std::move(built), std::move(gone), std::move(paid), std::move(wants)};
  std::ranges::move(compared_rows(plan.comparison, catalogs), std::back_inserter(rows));
  return rows;
}

std::string hindrance_words(const Hindrance& hindrance, const Site& whole) {
  const auto at = static_cast<std::size_t>(hindrance.phase);
  const std::string of = at < whole.phases.size() ? whole.phases[at] : fmt::format("phase {}", hindrance.phase);
  const Item* first = find(whole, hindrance.items.front());
  if (hindrance.items.size() > 1 || first == nullptr) return fmt::format("all that \"{}\" adds", of);
  return fmt::format("{}, of \"{}\"", title_of(*first), of);
}

}  // namespace yardwright::grow
