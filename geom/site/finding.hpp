// What a question has to say about one place of a yard: judged by a rule, with how much, and what would mend it.
// A finding keeps numbers, not sentences; the words are made in finding_words.hpp, in the reader's units.
#pragma once

#include <string>
#include <vector>

#include "geom/site/edit.hpp"
#include "geom/site/question.hpp"
#include "geom/site/rule.hpp"

namespace yardwright {

/// From worst to best, the order in which findings are listed.
enum class Verdict : std::uint8_t { fail, caution, not_checked, pass };
constexpr std::array<std::string_view, 4> names_of(Verdict) { return {"fail", "caution", "not-checked", "pass"}; }

enum class Bound : std::uint8_t { at_least, at_most };
constexpr std::array<std::string_view, 2> names_of(Bound) { return {"at-least", "at-most"}; }

/// The least change that passes, found with the check's own function: `edits` applied to the site make the
/// finding pass. `action` has no numbers ("raise Leg 1"); `change` and `becomes` are in `quantity`.
struct Mend {
  std::string action;
  Quantity quantity = Quantity::length;
  double change = 0;
  double becomes = 0;
  Edits edits;
  double along_m = 0;    ///< how long it is, where it is built along a line
  std::string across{};  ///< which way `becomes` is measured there: "high", "deep"
  bool operator==(const Mend&) const = default;
};

struct Finding {
  std::string id;  ///< stable across runs: "reach.slope-dry:12"
  Question question = Question::reach;
  std::string rule;  ///< id in the rule book
  Verdict verdict = Verdict::not_checked;
  std::vector<ItemId> items;
  std::string title;  ///< what, without numbers: "Spout to North 2 is too flat"
  std::string note;   ///< more, where numbers do not tell all: why it could not be checked, what to ask whom
  Quantity quantity = Quantity::length;
  Bound bound = Bound::at_least;
  double measured = 0;
  double required = 0;
  double margin = 0;  ///< positive passes; in `quantity`
  SitePath place;     ///< one point: a spot; two or more: a line to draw
  Basis basis = Basis::common_practice;
  std::string source;
  std::vector<Mend> mends;  ///< the least of each lever, the best first
  bool operator==(const Finding&) const = default;
};

using Findings = std::vector<Finding>;

/// "rule:12" or "rule:12-15", from the rule and the items that it is about.
std::string finding_id(std::string_view rule, const std::vector<ItemId>& items);

/// A finding that measures against a rule: margin and verdict follow from the bound; basis and source from the rule.
/// Where it falls short it is `worse` (fail, or caution for advice).
Finding judged(Question question, const Rule& rule, Bound bound, double measured, std::vector<ItemId> items,
               Verdict worse = Verdict::fail);

/// A check that could not run, and why.
Finding not_checked(Question question, std::string rule, std::vector<ItemId> items, std::string title, std::string why);
/// The same where a rule tells what would be asked: its value is kept, with basis and source.
Finding not_checked(Question question, const Rule& rule, Bound bound, std::vector<ItemId> items, std::string title,
                    std::string why);

/// Worst verdict first, then smallest margin relative to what is required, then id.
void sort_by_need(Findings& findings);

/// The worst verdict of a list; `pass` of an empty one would pass by silence, so that is `not_checked`.
Verdict worst(const Findings& findings);

}  // namespace yardwright
