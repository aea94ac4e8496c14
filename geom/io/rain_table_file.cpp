#include "geom/io/rain_table_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <fstream>
#include <optional>
#include <sstream>
#include <vector>

namespace yardwright {

namespace {

constexpr std::string_view day_row = "24-hr:";
constexpr std::string_view years_row = "by duration for ARI (years):";
constexpr const char* download = "export the point's table as text, with depths of the partial duration series";

tl::unexpected<Problems> refusal(std::string what, std::string where, std::string mend) {
  return tl::unexpected{Problems{{std::move(what), std::move(where), std::move(mend)}}};
}

std::string lower(std::string text) {
  std::ranges::transform(text, text.begin(), [](unsigned char letter) { return std::tolower(letter); });
  return text;
}

std::optional<double> number_in(std::string text) {
  std::erase_if(text, [](unsigned char letter) { return std::isspace(letter) || letter == '"'; });
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

/// The numbers after a row's label; nothing where one of them is none.
std::optional<std::vector<double>> numbers_after(const std::string& line, std::size_t label) {
  std::vector<double> numbers;
  std::istringstream cells{line.substr(label)};
  for (std::string cell; std::getline(cells, cell, ',');) {
    if (cell.find_first_not_of(" \t\r") == cell.npos) continue;
    const auto number = number_in(cell);
    if (!number) return std::nullopt;
    numbers.push_back(*number);
  }
  return numbers;
}

struct Read {
  std::optional<double> unit_m;
  bool intensity = false;
  std::vector<double> years, depths;
  int years_line = 0, depths_line = 0;
};

/// The head and the first block.
Expected<Read> read_block(std::string_view text) {
  Read read;
  std::istringstream lines{std::string{text}};
  int number = 0;
  for (std::string line; std::getline(lines, line) && read.depths.empty();) {
    ++number;
    const std::string words = lower(line);
    if (words.find("(inches") != words.npos) read.unit_m = 0.0254;
    if (words.find("(millimeters") != words.npos) read.unit_m = 0.001;
    if (words.find("intensity") != words.npos || words.find("/hour") != words.npos) read.intensity = true;
    const bool is_years = words.find(lower(std::string{years_row})) != words.npos;
    const bool is_day = words.starts_with(day_row);
    if (!is_years && !is_day) continue;
    const auto numbers = numbers_after(line, line.find(':') + 1);
    if (!numbers)
      return refusal(fmt::format("line {} holds something that is no number", number), "", "export the table again");
    (is_years ? read.years : read.depths) = *numbers;
    (is_years ? read.years_line : read.depths_line) = number;
  }
  return read;
}

}  // namespace

Expected<RainTable> rain_table_in(std::string_view text) {
  const auto read = read_block(text);
  if (!read) return tl::unexpected{read.error()};
  if (read->intensity) return refusal("it holds intensities, not depths", "", download);
  if (!read->unit_m) return refusal("its head names neither inches nor millimeters", "", download);
  if (read->years.empty()) return refusal(fmt::format("it has no row \"{}\"", years_row), "", download);
  if (read->depths.empty()) return refusal(fmt::format("it has no row \"{}\"", day_row), "", download);
  if (read->years.size() != read->depths.size())
    return refusal(fmt::format("line {} has {} columns of years, line {} has {} depths", read->years_line,
                               read->years.size(), read->depths_line, read->depths.size()),
                   "", "export the table again");
  RainTable table;
  for (std::size_t i = 0; i < read->years.size(); ++i)
    table.rows.push_back({read->years[i], read->depths[i] * *read->unit_m});
  // Read as typed, so that one place tells what a table may hold.
  const auto checked = parse_rain_table(text_of(table, UnitSystem::metric), UnitSystem::metric);
  if (!checked) return tl::unexpected{Problems{checked.error()}};
  return table;
}

Expected<RainTable> read_rain_table(const std::filesystem::path& file) {
  std::error_code no_file;
  if (std::filesystem::file_size(file, no_file) == 0) return refusal("it is empty", file.string(), download);
  std::ifstream in{file, std::ios::binary};
  std::stringstream text;
  if (!in || !(text << in.rdbuf()))
    return refusal("it cannot be read", file.string(), "check that the file is there and may be read");
  auto table = rain_table_in(text.str());
  if (!table) {
    for (Problem& problem : table.error()) problem.where = file.string();
  }
  return table;
}

}  // namespace yardwright
