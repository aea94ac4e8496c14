#include "editor/session/row_writer.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright::session {

namespace {

constexpr double shown_step = 0.01;  ///< of a length of a unit and more; what is shown is not taken unless it is typed

/// 16.00066 ft, which came of metres, is 16 ft to a person.
double as_shown(double value, Quantity quantity) {
  if (quantity != Quantity::length || std::abs(value) < 1) return value;
  return std::round(value / shown_step) * shown_step;
}

template <class Record>
std::vector<Choice> choices_from(const std::vector<Record>& records) {
  std::vector<Choice> choices;
  for (const Record& record : records) choices.push_back({record.id, record.name});
  return choices;
}

}  // namespace

std::string spoken(std::string_view key) {
  std::string words{key};
  std::ranges::replace(words, '-', ' ');
  if (words.size() == 1) words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  if (words.starts_with("lp ")) words.replace(0, 2, "LP");
  return words;
}

std::string text_for_typing(double si, Quantity quantity, UnitSystem units, double same_ratio) {
  const double factor = shown_unit(quantity, units).factor, shown = as_shown(si / factor, quantity);
  for (int digits = 1; digits <= 10; ++digits) {
    const double rounded = std::stod(fmt::format("{:.{}g}", shown, digits));
    if (std::abs(rounded - shown) <= same_ratio * std::abs(shown))
      return exact_text_of(rounded * factor, quantity, units);
  }
  return exact_text_of(shown * factor, quantity, units);
}

std::vector<Choice> catalog_choices(std::string_view key, const Catalogs& catalogs) {
  if (key == "grain") return choices_from(catalogs.grains);
  if (key == "cover") return choices_from(catalogs.covers);
  if (key == "vehicle") return choices_from(catalogs.vehicles);
  return {};
}

}  // namespace yardwright::session
