#include "geom/site/finding.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace yardwright {

std::string finding_id(std::string_view rule, const std::vector<ItemId>& items) {
  std::string id{rule};
  for (std::size_t i = 0; i < items.size(); ++i) id += fmt::format("{}{}", i == 0 ? ':' : '-', items[i].number);
  return id;
}

Finding judged(Question question, const Rule& rule, Bound bound, double measured, std::vector<ItemId> items,
               Verdict worse) {
  Finding finding;
  finding.id = finding_id(rule.id, items);
  finding.question = question;
  finding.rule = rule.id;
  finding.items = std::move(items);
  finding.quantity = rule.quantity;
  finding.bound = bound;
  finding.measured = measured;
  finding.required = rule.value;
  finding.margin = bound == Bound::at_least ? measured - rule.value : rule.value - measured;
  finding.verdict = finding.margin >= 0 ? Verdict::pass : worse;
  finding.basis = rule.basis;
  finding.source = rule.source;
  return finding;
}

Finding not_checked(Question question, std::string rule, std::vector<ItemId> items, std::string title,
                    std::string why) {
  Finding finding;
  finding.id = finding_id(rule, items);
  finding.question = question;
  finding.rule = std::move(rule);
  finding.items = std::move(items);
  finding.title = std::move(title);
  finding.note = std::move(why);
  finding.basis = Basis::geometry;
  return finding;
}

Finding not_checked(Question question, const Rule& rule, Bound bound, std::vector<ItemId> items, std::string title,
                    std::string why) {
  Finding finding = not_checked(question, rule.id, std::move(items), std::move(title), std::move(why));
  finding.quantity = rule.quantity;
  finding.bound = bound;
  finding.required = rule.value;
  finding.basis = rule.basis;
  finding.source = rule.source;
  return finding;
}

void sort_by_need(Findings& findings) {
  const auto need = [](const Finding& f) {
    const double scale = std::max(std::abs(f.required), 1e-9);
    return std::tuple{f.verdict, f.margin / scale, std::string_view{f.id}};
  };
  std::ranges::stable_sort(findings, [&](const Finding& a, const Finding& b) { return need(a) < need(b); });
}

Verdict worst(const Findings& findings) {
  if (findings.empty()) return Verdict::not_checked;
  return std::ranges::min_element(findings, {}, &Finding::verdict)->verdict;
}

}  // namespace yardwright
