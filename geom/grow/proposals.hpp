// Proposals for a yard that is to grow: from a brief, a few layouts that are unlike each other, none of which another beats in
// every aim, each asked every question afresh before it is told. What the search can promise and what not:
// docs/methods/grow.md
#pragma once

#include "geom/grow/layout_search.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::grow {

struct Proposal {
  std::string name;  ///< "proposal-1"
  Layout layout;
  Edits edits;  ///< of the whole yard
  LayoutMeasures measures;
  Findings not_checked;  ///< about what is new, or the yard as a whole: nothing passes by silence
  bool meets = false;    ///< all the storage that is wanted
};

struct Proposals {
  std::vector<Proposal> list;  ///< all meet the brief, the cheapest first; or none does, and the one with most is first
  SearchProgress progress;
  std::string why_none;  ///< a sentence, where the list is empty
};

/// What keeps a brief from being sought by: all of it.
Problems faults_of(const GrowthTask& task);

struct ProposalEffort {
  SearchEffort search{};
  std::size_t most = 5;
};

/// Of a task without faults. A stop gives what was found so far.
Proposals propose(const GrowthTask& task, const ProposalEffort& effort = {});

/// How far the bins of one have to be moved to make the other of it, of pairs the farthest; infinite where legs or sizes differ.
double apart_m(const Layout& a, const Layout& b);
/// Layouts nearer to each other are told as one.
inline constexpr double unlike_from_m = 3.0;

}  // namespace yardwright::grow
