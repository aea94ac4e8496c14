#include "editor/cli/findings_print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "geom/site/finding_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

void print_finding(const Finding& finding, UnitSystem units) {
  fmt::print("  {:<11} {}\n", word(finding.verdict), sentence(finding, units));
  for (std::size_t i = 1; i < finding.mends.size(); ++i)
    fmt::print("  {:<11} or {}\n", "", mend_words(finding.mends[i], units));
  if (finding.verdict != Verdict::pass) fmt::print("  {:<11} {} [{}]\n", "", basis_words(finding), finding.id);
}

/// The worst verdict; where nothing is wrong but something was not checked, that what was does pass.
std::string head_words(const Findings& findings) {
  const bool some_pass = std::ranges::find(findings, Verdict::pass, &Finding::verdict) != findings.end();
  if (worst(findings) == Verdict::not_checked && some_pass) return "passes as far as it is checked";
  return std::string{word(worst(findings))};
}

}  // namespace

std::string_view word(Question question) { return names_of(question)[static_cast<std::size_t>(question)]; }
std::string_view word(Verdict verdict) { return names_of(verdict)[static_cast<std::size_t>(verdict)]; }

nlohmann::ordered_json as_json(const Mend& mend, UnitSystem units) {
  Json out{{"action", mend.action}, {"words", mend_words(mend, units)}};
  if (mend.change == 0) return out;
  out["change"] = mend.change;
  out["becomes"] = mend.becomes;
  out["unit"] = units_of(mend.quantity).front().suffix;
  if (mend.along_m > 0) out["along"] = mend.along_m;
  return out;
}

nlohmann::ordered_json as_json(const Finding& finding, UnitSystem units) {
  Json out{{"id", finding.id},
           {"question", word(finding.question)},
           {"rule", finding.rule},
           {"verdict", word(finding.verdict)},
           {"title", headline(finding)}};
  if (finding.verdict != Verdict::not_checked) {
    out["measured"] = finding.measured;
    out["required"] = finding.required;
    out["bound"] = names_of(finding.bound)[static_cast<std::size_t>(finding.bound)];
    out["margin"] = finding.margin;
    out["unit"] = units_of(finding.quantity).front().suffix;
  }
  out["note"] = finding.note;
  out["items"] = Json::array();
  for (const ItemId id : finding.items) out["items"].push_back(id.number);
  out["basis"] = names_of(finding.basis)[static_cast<std::size_t>(finding.basis)];
  out["source"] = finding.source;
  out["mends"] = Json::array();
  for (const Mend& mend : finding.mends) out["mends"].push_back(as_json(mend, units));
  return out;
}

void print_findings(std::string_view question, const Findings& findings, UnitSystem units, bool all) {
  fmt::print("\n{}: {}\n", question, head_words(findings));
  std::size_t passed = 0;
  for (const Finding& finding : findings) {
    if (finding.verdict == Verdict::pass && !all)
      ++passed;
    else
      print_finding(finding, units);
  }
  if (passed > 0) fmt::print("  {:<11} {} more (--all lists them)\n", "pass", passed);
}

void print_caution() { fmt::print("\nA planning aid. Local code, the utility and licensed practice decide.\n"); }

}  // namespace yardwright::cli
