#include "editor/cli/phases_print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/quantity_json.hpp"
#include "editor/cli/verb.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;
using grow::Hindrance;
using grow::PhasePlan;
using grow::PhaseStep;

/// Headed by the phases' names; columns as wide as their widest cell.
void print_table(const PhasePlan& plan) {
  std::vector<std::vector<std::string>> rows{{""}};
  for (const grow::Option& option : plan.comparison.options) rows.front().push_back(option.name);
  for (const grow::ComparedRow& row : grow::phase_rows(plan, shipped_catalogs())) {
    rows.push_back({row.about});
    for (const grow::ComparedCell& cell : row.cells) rows.back().push_back(cell.words);
  }
  std::vector<std::size_t> widths(rows.front().size(), 0);
  for (const auto& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  }
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) line += fmt::format("{:<{}}  ", row[i], widths[i]);
    fmt::print("{}\n", line.substr(0, line.find_last_not_of(' ') + 1));
  }
}

void print_hindrances(const PhaseStep& step, const Finding& finding, const Site& whole) {
  for (const Hindrance& one : step.hindrances) {
    if (one.finding.id == finding.id) fmt::print("  {:<11} not so without {}\n", "", grow::hindrance_words(one, whole));
  }
}

void print_step(const PhaseStep& step, const std::string& name, const Site& whole) {
  fmt::print("\n{}: {}\n", name,
             step.broken.empty()
                 ? step.phase == 0 ? "nothing fails or wants caution" : "nothing newly fails or wants caution"
             : step.phase == 0 ? "wants already"
                               : "newly wants");
  for (const Finding& one : step.broken) {
    fmt::print("  {:<11} {}\n", word(one.verdict), sentence(one, whole.units));
    print_hindrances(step, one, whole);
  }
  for (const Finding& one : step.settled) fmt::print("  {:<11} {}\n", "no longer", headline(one));
}

Json ids(const std::vector<ItemId>& items) {
  Json all = Json::array();
  for (const ItemId id : items) all.push_back(id.number);
  return all;
}

Json findings_json(const Findings& findings, UnitSystem units) {
  Json all = Json::array();
  for (const Finding& one : findings) all.push_back(as_json(one, units));
  return all;
}

Json state_json(const grow::Option& option) {
  Json out{{"verdicts", Json::object()}, {"capacity", Json::array()}};
  for (const grow::Standing& one : option.standings) out["verdicts"][std::string{word(one.question)}] = word(one.worst);
  for (const pace::GrainCapacity& one : option.answers.pace->capacity)
    out["capacity"].push_back(
        {{"grain", one.grain}, {"dry_m3", one.dry.as_cubic_metres()}, {"wet_m3", one.wet.as_cubic_metres()}});
  return out;
}

Json step_json(const PhaseStep& step, const grow::Option& option, UnitSystem units) {
  Json out{{"phase", step.phase}, {"name", option.name}};
  out.update(state_json(option));
  out["built"] = ids(step.built);
  out["gone"] = ids(step.gone);
  out["lines"] = as_json(step.cost);
  out["cost"] = step.paid();
  out["kept"] = step.kept;
  out["without_price"] = step.cost.without_price;
  out["taken_away"] = Json::array();
  for (const grow::QuantityLine& line : step.change.gone.lines) out["taken_away"].push_back(as_json(line));
  out["broken"] = findings_json(step.broken, units);
  out["settled"] = findings_json(step.settled, units);
  out["hindrances"] = Json::array();
  for (const Hindrance& one : step.hindrances)
    out["hindrances"].push_back({{"items", ids(one.items)}, {"phase", one.phase}, {"finding", one.finding.id}});
  return out;
}

}  // namespace

void print_text(const PhasePlan& plan, const Site& whole) {
  fmt::print("{}\n", whole.name);
  print_table(plan);
  fmt::print("\nprices: {}\n", grow::book_words(plan.comparison.book));
  for (const PhaseStep& step : plan.steps)
    print_step(step, plan.comparison.options[static_cast<std::size_t>(step.phase)].name, whole);
  print_caution();
}

void print_json(const PhasePlan& plan, const Site& whole, const std::string& picture) {
  Json out{{"site", whole.name}, {"prices", as_json(plan.comparison.book)}, {"phases", Json::array()}};
  for (const PhaseStep& step : plan.steps)
    out["phases"].push_back(
        step_json(step, plan.comparison.options[static_cast<std::size_t>(step.phase)], whole.units));
  if (!picture.empty()) out["picture"] = picture;
  write_json(out, 1);
}

bool fails_newly(const PhasePlan& plan) {
  return std::ranges::any_of(plan.steps, [](const PhaseStep& step) {
    return step.phase > 0 && std::ranges::count(step.broken, Verdict::fail, &Finding::verdict) > 0;
  });
}

}  // namespace yardwright::cli
