#include "geom/grow/proposal_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geom/units/text.hpp"

namespace yardwright::grow {

namespace {

std::string length_words(double m, UnitSystem units) { return text_of(m, Quantity::length, units); }
std::string grain_words(double m3, UnitSystem units) { return text_of(m3, Quantity::grain_volume, units); }

/// "a, b or c"
std::string either(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i)
    all += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
  return all;
}

std::string add(std::string words, const std::string& more) { return words.empty() ? more : words + ", " + more; }

}  // namespace

std::string bin_size_words(const BinSize& size, UnitSystem units) {
  return size_text(Work::bin, {size.diameter_m, size.eave_height_m}, units);
}

std::string brief_words(const GrowthTask& task) {
  const UnitSystem units = task.site.units;
  std::vector<std::string> sizes, heights;
  for (const BinSize& size : task.brief.bins) sizes.push_back(bin_size_words(size, units));
  for (const double height_m : task.brief.discharge_m) heights.push_back(length_words(height_m, units));
  std::string words = fmt::format("{} more of {}, in bins of {}", grain_words(task.brief.wanted_m3, units),
                                  task.model.grain, either(sizes));
  words += heights.empty() ? "; legs as they are" : "; legs as they are or raised to " + either(heights);
  if (task.brief.budget)
    words += fmt::format("; for {} {} at most", number_text(*task.brief.budget, 0), task.book.currency);
  return words + (task.brief.bears_advice ? "; cautions are borne" : "; nothing new wants caution");
}

std::string leg_words(const GrowthTask& task, const Layout& layout) {
  std::string words;
  for (std::size_t i = 0; i < task.legs.size(); ++i) {
    const double now_m = as<Leg>(task.legs[i])->discharge_height_m, then_m = layout.discharge_m[i];
    if (then_m != now_m)
      words =
          add(words, fmt::format("raise {} by {} to {}", title_of(task.legs[i]),
                                 length_words(then_m - now_m, task.site.units), length_words(then_m, task.site.units)));
  }
  return words.empty() ? "legs as they are" : words;
}

std::string bins_words(const GrowthTask& task, const Layout& layout) {
  std::string words;
  for (std::size_t size = 0; size < task.brief.bins.size(); ++size) {
    const auto count = std::ranges::count(layout.stands, size, &Stand::size);
    if (count > 0)
      words = add(words, fmt::format("{} bin{} of {}", count, count == 1 ? "" : "s",
                                     bin_size_words(task.brief.bins[size], task.site.units)));
  }
  return words;
}

std::string cost_words(const GrowthTask& task, const LayoutMeasures& measures) {
  const std::string sum = fmt::format("{} {}", number_text(measures.cost, 0), task.book.currency);
  if (measures.without_price == 0) return sum;
  return fmt::format("{}, and {} work{} without a price", sum, measures.without_price,
                     measures.without_price == 1 ? "" : "s");
}

std::string safety_words(const LayoutMeasures& measures) {
  const double percent = std::floor(100 * measures.safety_ratio);
  if (percent < 0) return fmt::format("{:.0f}% short of advice", -percent);
  return fmt::format("{}{:.0f}% over what is asked", percent >= 100 ? "at least " : "", percent);
}

std::string short_words(const GrowthTask& task, const Proposal& proposal) {
  if (proposal.meets) return {};
  return grain_words(task.brief.wanted_m3 - proposal.measures.stored_m3, task.site.units) + " short of what is wanted";
}

}  // namespace yardwright::grow
