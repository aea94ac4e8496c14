// A layout put to the proof: built on the plan and asked every question, held against the yard as it was, and measured.
// docs/methods/grow.md
#pragma once

#include "geom/grow/cost.hpp"
#include "geom/grow/front.hpp"
#include "geom/grow/layout.hpp"

namespace yardwright::grow {

struct LayoutMeasures {
  double stored_m3 = 0;  ///< of dry storage more, heaped and packed
  double cost =
      0;  ///< of what is built, in the book's currency; of a raised leg the height gained, and its spouts hung anew
  int without_price = 0;    ///< works that are in no sum
  double safety_ratio = 0;  ///< least margin over what is required, of reach, turn and clear; no more than 1 is counted
  double raised_m = 0;      ///< of all legs together
  double spouts_m = 0;      ///< length of the new ones, in space
  bool operator==(const LayoutMeasures&) const = default;
};

struct LayoutTrial {
  Layout layout;
  Edits edits;  ///< what builds it; nothing where it cannot be filled
  LayoutMeasures measures;
  Findings broken;  ///< worse for it, or new and not passing; what was wanting already, where it is so by much more
  Findings not_checked;  ///< about what is new, or about the yard as a whole; told by tried_afresh() alone
  bool too_dear = false;
  bool moves_ground = false;  ///< under what stands
  bool holds() const { return !edits.empty() && broken.empty() && !too_dear && !moves_ground; }
};

/// Tries layouts of one task; several threads may. What takes long is not asked once it is known that a layout does not hold:
/// then its measures are not complete.
class LayoutTrials {
 public:
  explicit LayoutTrials(const GrowthTask& task);

  LayoutTrial tried(const Layout& layout) const;
  /// The same by a fresh check of the whole yard, which knows of no answer before.
  LayoutTrial tried_afresh(const Layout& layout) const;

 private:
  Findings broken(const Answers& after, const std::vector<Question>& questions) const;
  void measure(LayoutTrial& trial, const Site& grown, const Answers& after) const;
  bool is_worse_than_it_was(const Finding& finding) const;
  double safety_of(const Answers& after) const;

  const GrowthTask& task_;
  Harm harm_;
  std::map<std::string, double> margin_before_;
};

/// What is wanted little of, each about 0 to 1: storage short of the brief, cost, safety short of 1, raise, spouts. More
/// storage than is wanted is worth nothing.
Aims aims_of(const LayoutMeasures& measures, const GrowthBrief& brief);

/// All the storage that is wanted, to a bushel.
bool meets(const LayoutMeasures& measures, const GrowthBrief& brief);

}  // namespace yardwright::grow
