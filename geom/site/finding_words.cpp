#include "geom/site/finding_words.hpp"

#include <fmt/format.h>

#include <cctype>
#include <cmath>

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

/// What a finding measures: a ratio is a share of what is there, of grain or of a rate.
std::string amount(double si, const Finding& finding, UnitSystem units) {
  return text_of(si, finding.quantity == Quantity::ratio ? Quantity::grade : finding.quantity, units);
}

/// Not one of the things of which some are needed.
bool is_missing_all(const Finding& finding) {
  return finding.quantity == Quantity::count && finding.bound == Bound::at_least && finding.measured == 0 &&
         finding.required > 0;
}

/// What the rule says where a check did not run and a person is sent to measure instead.
std::string asked_words(const Finding& finding, UnitSystem units) {
  const bool is_measurable = finding.quantity == Quantity::length || finding.quantity == Quantity::voltage;
  if (!is_measurable || finding.required == 0) return "";
  const std::string required = text_of(finding.required, finding.quantity, units);
  return (finding.bound == Bound::at_least ? "the rule says at least " : "the rule says at most ") + required;
}

}  // namespace

std::string headline(const Finding& finding) {
  std::string text = finding.title;
  if (!text.empty()) text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

std::string measured_words(const Finding& finding, UnitSystem units) {
  if (finding.verdict == Verdict::not_checked) return asked_words(finding, units);
  const std::string measured = amount(finding.measured, finding, units);
  const std::string required = amount(finding.required, finding, units);
  if (is_missing_all(finding)) return "it needs " + (finding.required == 1 ? "one" : required);
  if (finding.bound == Bound::at_least) return fmt::format("{} of {} needed", measured, required);
  return fmt::format("{}, at most {}", measured, required);
}

std::string margin_words(const Finding& finding, UnitSystem units) {
  if (finding.verdict == Verdict::not_checked || is_missing_all(finding)) return "";
  const std::string size = amount(std::abs(finding.margin), finding, units);
  if (finding.margin >= 0) return size + " to spare";
  return (finding.bound == Bound::at_least ? "short by " : "over by ") + size;
}

std::string mend_words(const Mend& mend, UnitSystem units) {
  if (mend.change == 0) return mend.action;
  if (mend.along_m > 0)
    return fmt::format("{}, {} {} and {} long", mend.action, text_of(mend.becomes, mend.quantity, units), mend.across,
                       text_of(mend.along_m, Quantity::length, units));
  if (mend.becomes == mend.change)
    return fmt::format("{} by {}", mend.action, text_of(std::abs(mend.change), mend.quantity, units));
  return fmt::format("{} by {} to {}", mend.action, text_of(std::abs(mend.change), mend.quantity, units),
                     text_of(mend.becomes, mend.quantity, units));
}

std::string basis_words(const Finding& finding) {
  const std::string_view basis = words_for(finding.basis);
  if (finding.source.empty()) return std::string{basis};
  if (finding.source.starts_with(basis)) return finding.source;
  return fmt::format("{}: {}", basis, finding.source);
}

std::string sentence(const Finding& finding, UnitSystem units) {
  std::string text = headline(finding);
  for (const std::string& part : {measured_words(finding, units), margin_words(finding, units), finding.note}) {
    if (!part.empty()) text += "; " + part;
  }
  if (!finding.mends.empty()) text += "; mend: " + mend_words(finding.mends.front(), units);
  return text;
}

}  // namespace yardwright
