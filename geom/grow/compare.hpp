// Several versions of one yard side by side: what each holds and costs, how it stands with every question, what it moves of
// earth, how long its spouts and ways are, and how it differs from the first. The lines are the same for the command line
// and the sheet. docs/methods/grow.md
#pragma once

#include "geom/check/check.hpp"
#include "geom/grow/cost.hpp"
#include "geom/grow/differences.hpp"

namespace yardwright::grow {

/// How a yard stands with one question.
struct Standing {
  Question question = Question::reach;
  Verdict worst = Verdict::not_checked;
  int fails = 0, cautions = 0, not_checked = 0, passes = 0;
  std::optional<Finding> nearest;  ///< the most pressing of those that could be measured: its margin is the worst
};

struct Option {
  std::string name;  ///< of its file, since versions of a yard have one name
  Site site;         ///< as it stands in the phase compared
  Answers answers;
  std::vector<Standing> standings;  ///< in the order of the questions
  Quantities all;                   ///< of everything that stands
  Quantities built;                 ///< of what is built after the site's first phase, where it has several
  Cost cost_of_all, cost_of_built;
  std::vector<Difference> differences;  ///< from the first option; none of the first
};

/// A version to compare: the site with all its phases, and the phase as of which it is compared.
struct Version {
  std::string name;
  Site site;
  int phase = 0;
};

struct Comparison {
  std::vector<Option> options;
  PriceBook book;
  UnitSystem units = UnitSystem::us;  ///< of the first
};

Comparison compare(const std::vector<Version>& versions, const PriceBook& book, const Catalogs& catalogs);

/// A line of the comparison: what it is about, and a cell an option.
struct ComparedCell {
  std::string words;
  std::optional<Verdict> verdict;
  std::string detail;  ///< what the words are of, where there is room: "Spout to North 2 is too flat"
};
struct ComparedRow {
  std::string about;
  std::vector<ComparedCell> cells;
};
std::vector<ComparedRow> compared_rows(const Comparison& comparison, const Catalogs& catalogs);

}  // namespace yardwright::grow
