#include "geom/grow/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "geom/grow/grow.hpp"
#include "geom/site/finding_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

constexpr std::string_view none = "–";

Standing standing_of(const Answers& answers, Question question) {
  const Findings& findings = findings_of(answers, question);
  Standing standing{question, worst(findings)};
  for (const Finding& finding : findings) {
    switch (finding.verdict) {
      case Verdict::fail: ++standing.fails; break;
      case Verdict::caution: ++standing.cautions; break;
      case Verdict::not_checked: ++standing.not_checked; break;
      case Verdict::pass: ++standing.passes; break;
    }
    if (!standing.nearest && finding.verdict != Verdict::not_checked) standing.nearest = finding;
  }
  return standing;
}

Option option_of(const Version& version, const PriceBook& book, const Catalogs& catalogs) {
  Option option{version.name, as_of(version.site, version.phase), {}, {}, {}, {}, {}, {}, {}};
  option.answers =
      with_growth(check(option.site, catalogs), option.site, catalogs, built_after(version.site, version.phase));
  for (const Question question : every_question) option.standings.push_back(standing_of(option.answers, question));
  option.all = quantities(option.site, option.answers.surface, catalogs);
  option.cost_of_all = cost_of(option.all, book);
  if (version.phase > 0) option.built = quantity_change(as_of(version.site, 0), option.site, catalogs).built;
  option.cost_of_built = cost_of(option.built, book);
  return option;
}

/// Where nothing is wrong but something was not checked, what was does pass.
std::string verdict_words(const Standing& standing) {
  if (standing.worst == Verdict::not_checked) return standing.passes > 0 ? "passes as far as checked" : "not checked";
  return std::string{names_of(standing.worst)[static_cast<std::size_t>(standing.worst)]};
}

std::string places(std::size_t count) { return fmt::format("{} place{}", count, count == 1 ? "" : "s"); }

/// The lines, each a function of an option.
class Rows {
 public:
  Rows(const Comparison& comparison, const Catalogs& catalogs) : all_{comparison}, catalogs_{catalogs} {}

  std::vector<ComparedRow> take() {
    add_capacity();
    add_cost();
    for (const Question question : every_question) add_question(question);
    add("findings: fail / caution / not checked", [](const Option& option) { return counts(option); });
    add_earth();
    add_grain_ways();
    add_routes();
    add("differs from the first in", [&](const Option& option) {
      return &option == &all_.options.front() ? std::string{none} : places(option.differences.size());
    });
    return std::move(rows_);
  }

 private:
  void add(std::string about, const std::function<std::string(const Option&)>& words) {
    ComparedRow row{std::move(about), {}};
    for (const Option& option : all_.options) row.cells.push_back({words(option), {}, {}});
    rows_.push_back(std::move(row));
  }
  /// A row that says nothing of any option is none.
  void add_some(std::string about, const std::function<std::string(const Option&)>& words) {
    add(std::move(about), words);
    if (std::ranges::all_of(rows_.back().cells, [](const ComparedCell& cell) { return cell.words == none; }))
      rows_.pop_back();
  }
  std::string text(double si, Quantity quantity) const { return text_of(si, quantity, all_.units); }

  void add_capacity() {
    std::vector<std::string> grains;
    for (const Option& option : all_.options) {
      for (const pace::GrainCapacity& one : option.answers.pace->capacity) {
        if (std::ranges::find(grains, one.grain) == grains.end()) grains.push_back(one.grain);
      }
    }
    for (const std::string& grain : grains) {
      const Grain* known = find(catalogs_.grains, grain);
      const std::string name = known == nullptr ? grain : known->name;
      add_some("dry storage, " + name,
               [&](const Option& option) { return held(option, grain, &pace::GrainCapacity::dry); });
      add_some("wet holding, " + name,
               [&](const Option& option) { return held(option, grain, &pace::GrainCapacity::wet); });
    }
  }
  std::string held(const Option& option, const std::string& grain, GrainVolume pace::GrainCapacity::*what) const {
    for (const pace::GrainCapacity& one : option.answers.pace->capacity) {
      const double m3 = (one.*what).as_cubic_metres();
      if (one.grain == grain && m3 > 0) return text(m3, Quantity::grain_volume);
    }
    return std::string{none};
  }

  void add_cost() {
    const auto money = [&](const Cost& cost) {
      return cost.lines.empty() ? std::string{none} : total_words(cost, all_.book);
    };
    const std::string invented = all_.book.invented ? ", invented prices" : "";
    add("cost of all that stands" + invented, [&](const Option& option) { return money(option.cost_of_all); });
    add_some("cost of what is built after its first phase" + invented,
             [&](const Option& option) { return money(option.cost_of_built); });
  }

  void add_question(Question question) {
    ComparedRow row{std::string{names_of(question)[static_cast<std::size_t>(question)]}, {}};
    for (const Option& option : all_.options) {
      const Standing& standing = option.standings[static_cast<std::size_t>(question)];
      const std::string verdict = verdict_words(standing);
      const std::string margin = standing.nearest ? ": " + margin_words(*standing.nearest, all_.units) : "";
      row.cells.push_back({verdict + margin, standing.worst, standing.nearest ? headline(*standing.nearest) : ""});
    }
    rows_.push_back(std::move(row));
  }

  static std::string counts(const Option& option) {
    int fails = 0, cautions = 0, not_checked = 0;
    for (const Standing& standing : option.standings) {
      fails += standing.fails;
      cautions += standing.cautions;
      not_checked += standing.not_checked;
    }
    return fmt::format("{} / {} / {}", fails, cautions, not_checked);
  }

  void add_earth() {
    for (const Work work : {Work::cut, Work::fill, Work::earth_brought, Work::earth_left_over}) add_amount(work);
  }

  void add_amount(Work work) {
    add_some(std::string{measure_of(work).words}, [&](const Option& option) {
      const double amount = amount_of(option.all, work);
      return amount > 0 ? text_in(amount, trade_unit(work, all_.units)) : std::string{none};
    });
  }

  void add_grain_ways() {
    add_amount(Work::spout);
    add_some("longest spout", [&](const Option& option) {
      double longest_m = 0;
      for (const QuantityLine& line : option.all.lines) {
        if (line.work != Work::spout) continue;
        for (const QuantityPart& part : line.parts) longest_m = std::max(longest_m, part.amount);
      }
      return longest_m > 0 ? text(longest_m, Quantity::length) : std::string{none};
    });
    add_some("highest leg", [&](const Option& option) {
      double highest_m = 0;
      for_each<Leg>(option.site,
                    [&](const Item&, const Leg& leg) { highest_m = std::max(highest_m, leg.discharge_height_m); });
      return highest_m > 0 ? text(highest_m, Quantity::length) : std::string{none};
    });
  }

  void add_routes() {
    std::vector<std::string> names;
    for (const Option& option : all_.options) {
      for (const turn::DrivenRoute& route : option.answers.turn->routes) {
        if (const std::string name = name_of(option, route); std::ranges::find(names, name) == names.end())
          names.push_back(name);
      }
    }
    for (const std::string& name : names)
      add_some(name + ", driven length", [&](const Option& option) { return driven_words(option, name); });
  }
  static std::string name_of(const Option& option, const turn::DrivenRoute& route) {
    const Item* item = find(option.site, route.route);
    return item == nullptr ? std::string{"route"} : title_of(*item);
  }
  std::string driven_words(const Option& option, const std::string& name) const {
    for (const turn::DrivenRoute& route : option.answers.turn->routes) {
      if (name_of(option, route) == name && !route.driven.stations_m.empty())
        return text(route.driven.stations_m.back(), Quantity::length);
    }
    return std::string{none};
  }

  const Comparison& all_;
  const Catalogs& catalogs_;
  std::vector<ComparedRow> rows_;
};

}  // namespace

Comparison compare(const std::vector<Version>& versions, const PriceBook& book, const Catalogs& catalogs) {
  Comparison comparison{{}, book, versions.empty() ? UnitSystem::us : versions.front().site.units};
  for (const Version& version : versions) {
    comparison.options.push_back(option_of(version, book, catalogs));
    Option& option = comparison.options.back();
    option.differences = differences(comparison.options.front().site, option.site, catalogs.rules);
  }
  return comparison;
}

std::vector<ComparedRow> compared_rows(const Comparison& comparison, const Catalogs& catalogs) {
  return Rows{comparison, catalogs}.take();
}

}  // namespace yardwright::grow
