#include "editor/session/row_writer.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright::session {

namespace {

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
  return words;
}

std::string text_for_typing(double si, Quantity quantity, UnitSystem units, double same_ratio) {
  const double factor = shown_unit(quantity, units).factor;
  for (int digits = 1; digits <= 10; ++digits) {
    const double rounded = std::stod(fmt::format("{:.{}g}", si / factor, digits)) * factor;
    if (std::abs(rounded - si) <= same_ratio * std::abs(si)) return exact_text_of(rounded, quantity, units);
  }
  return exact_text_of(si, quantity, units);
}

std::vector<Choice> catalog_choices(std::string_view key, const Catalogs& catalogs) {
  if (key == "grain") return choices_from(catalogs.grains);
  if (key == "cover") return choices_from(catalogs.covers);
  if (key == "vehicle") return choices_from(catalogs.vehicles);
  return {};
}

}  // namespace yardwright::session
