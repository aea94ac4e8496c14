#include "editor/session/question_words.hpp"

#include <algorithm>

#include "geom/units/text.hpp"

namespace yardwright::session {

namespace {

struct Words {
  std::string_view name, asks;
};

constexpr std::array<Words, 6> words{{
    {"Reach", "Can every bin be filled from the leg by gravity?"},
    {"Turn", "Do the trucks get in, dump, and get out?"},
    {"Drain", "Where does the rain go, and does it end in a pit?"},
    {"Clear", "Are the distances kept to lines, lot edges, wells, tanks and dwellings?"},
    {"Pace", "Does the yard keep up with the combine?"},
    {"Grow", "Where does the next bin go, and the three after it?"},
}};

/// A margin without a unit ("−1", "0.3") says nothing where it stands alone.
bool is_bare(Quantity quantity) { return quantity == Quantity::count || quantity == Quantity::ratio; }

}  // namespace

std::string_view name_of(Question question) { return words[static_cast<std::size_t>(question)].name; }
std::string_view asks(Question question) { return words[static_cast<std::size_t>(question)].asks; }

std::string margin_in_short(const Finding& finding, UnitSystem units) {
  std::string text = signed_text_of(finding.margin, finding.quantity, units);
  if (text.starts_with('-')) text.replace(0, 1, "−");
  return text;
}

std::string worst_in_short(const Findings& findings, UnitSystem units) {
  if (findings.empty()) return "not asked";
  const Finding& first = findings.front();
  if (first.verdict == Verdict::not_checked) return "not checked";
  if (!is_bare(first.quantity)) return margin_in_short(first, units);
  if (first.verdict == Verdict::pass) return "passes";
  const auto alike = std::ranges::count(findings, first.verdict, &Finding::verdict);
  return std::to_string(alike) + (first.verdict == Verdict::fail ? " to mend" : " to look at");
}

}  // namespace yardwright::session
