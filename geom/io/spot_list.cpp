#include "geom/io/spot_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>

namespace yardwright {

namespace {

using Words = std::vector<std::string>;

constexpr std::string_view blanks = " \t\r\"";

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(blanks);
  if (from == std::string_view::npos) return {};
  return std::string{text.substr(from, text.find_last_not_of(blanks) - from + 1)};
}

/// The mark between a line's columns. With semicolons a comma is a decimal comma.
char separator_of(std::string_view line) {
  for (const char mark : {';', '\t', ','}) {
    if (line.find(mark) != std::string_view::npos) return mark;
  }
  return ' ';
}

Words columns_of(std::string_view line) {
  const char mark = separator_of(line);
  Words out;
  while (!line.empty()) {
    const auto end = std::min(line.find(mark), line.size());
    std::string word = trimmed(line.substr(0, end));
    if (mark == ';') std::ranges::replace(word, ',', '.');
    if (mark != ' ' || !word.empty()) out.push_back(std::move(word));
    line.remove_prefix(std::min(end + 1, line.size()));
  }
  return out;
}

std::optional<double> number_of(std::string_view word) {
  if (word.starts_with('+')) word.remove_prefix(1);
  double value = 0;
  const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
  if (error != std::errc{} || end != word.data() + word.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

/// Which column holds x, y and the level.
using Places = std::array<std::size_t, 3>;

std::optional<Places> named_places(const Words& names) {
  static const std::array<Words, 3> known{Words{"x", "e", "east", "easting"}, Words{"y", "n", "north", "northing"},
                                          Words{"z", "h", "level", "elev", "elevation", "height"}};
  Places out{};
  for (std::size_t i = 0; i < known.size(); ++i) {
    const auto found = std::ranges::find_if(names, [&](std::string name) {
      std::ranges::transform(name, name.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
      name = name.substr(0, name.find_first_of(" (_"));
      return std::ranges::find(known[i], name) != known[i].end();
    });
    if (found == names.end()) return std::nullopt;
    out[i] = static_cast<std::size_t>(found - names.begin());
  }
  return out;
}

class SpotReader {
 public:
  explicit SpotReader(std::string_view name) : name_{name} {}
  void read_line(std::string_view text);
  Expected<std::vector<Spot>> result() &&;

 private:
  void read_names(const Words& words);
  void read_spot(const Words& words);
  void complain(std::string what, std::string mend);

  std::string name_;
  int line_ = 0;
  bool begun_ = false;
  Places places_{0, 1, 2};
  std::vector<Spot> spots_;
  Problems problems_;
  std::size_t unsaid_ = 0;
};

void SpotReader::complain(std::string what, std::string mend) {
  constexpr std::size_t most_problems = 20;
  if (problems_.size() == most_problems)
    ++unsaid_;
  else
    problems_.push_back({std::move(what), fmt::format("{}, line {}", name_, line_), std::move(mend)});
}

void SpotReader::read_line(std::string_view text) {
  ++line_;
  const std::string line = trimmed(text.substr(0, text.find('#')));
  if (line.empty()) return;
  const Words words = columns_of(line);
  const bool first = !std::exchange(begun_, true);
  if (first && std::ranges::none_of(words, [](const std::string& word) { return number_of(word).has_value(); }))
    read_names(words);
  else
    read_spot(words);
}

void SpotReader::read_names(const Words& words) {
  if (const auto places = named_places(words))
    places_ = *places;
  else
    complain("the column names do not tell x, y and z apart", "name the columns x, y, z, or leave the names away");
}

void SpotReader::read_spot(const Words& words) {
  std::array<double, 3> values{};
  for (std::size_t i = 0; i < values.size(); ++i) {
    const auto value = places_[i] < words.size() ? number_of(words[places_[i]]) : std::nullopt;
    if (!value)
      return complain(places_[i] < words.size() ? fmt::format("\"{}\" is not a number", words[places_[i]].substr(0, 40))
                                                : "has fewer than three columns",
                      "give x, y and level as plain numbers");
    values[i] = *value;
  }
  if (spots_.size() == most_spots)
    return complain("is one spot too many", fmt::format("give at most {} spots", most_spots));
  spots_.push_back({values[0], values[1], values[2], line_});
}

Expected<std::vector<Spot>> SpotReader::result() && {
  if (unsaid_ > 0)
    problems_.push_back({fmt::format("{} more lines cannot be read", unsaid_), name_, "mend them in the same way"});
  if (!problems_.empty()) return tl::unexpected{std::move(problems_)};
  return std::move(spots_);
}

}  // namespace

Expected<std::vector<Spot>> read_spot_list(std::string_view text, std::string_view name) {
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);  // the mark that spreadsheets put before UTF-8
  SpotReader reader{name};
  while (!text.empty()) {
    const auto end = std::min(text.find('\n'), text.size());
    reader.read_line(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return std::move(reader).result();
}

}  // namespace yardwright
