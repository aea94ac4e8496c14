#include "editor/session/question_words.hpp"

#include <fmt/format.h>

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

std::ptrdiff_t count_of(const Findings& findings, Verdict verdict) {
  return std::ranges::count(findings, verdict, &Finding::verdict);
}

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
  if (first.verdict == Verdict::not_checked) return count_of(findings, Verdict::pass) > 0 ? "some pass" : "not checked";
  if (!is_bare(first.quantity)) return margin_in_short(first, units);
  if (first.verdict == Verdict::pass) return "passes";
  return std::to_string(count_of(findings, first.verdict)) +
         (first.verdict == Verdict::fail ? " to mend" : " to look at");
}

std::string counts_in_words(const Findings& findings) {
  constexpr std::pair<Verdict, std::string_view> parts[] = {{Verdict::fail, "to mend"},
                                                            {Verdict::caution, "to look at"},
                                                            {Verdict::pass, "pass"},
                                                            {Verdict::not_checked, "not checked"}};
  std::string text;
  for (const auto& [verdict, called] : parts) {
    const auto count = count_of(findings, verdict);
    if (count > 0) text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count, called);
  }
  return text;
}

}  // namespace yardwright::session
