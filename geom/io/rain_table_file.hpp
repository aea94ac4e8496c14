// Reads the 24-hour row of a point precipitation frequency table as NOAA Atlas 14 exports it (comma-separated text, depths in
// inches or millimetres). Columns are found by their years, the row by its duration, the unit by the head; later blocks hold
// the bounds of confidence and are not read.
#pragma once

#include <filesystem>
#include <string_view>

#include "geom/site/storm.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

Expected<RainTable> rain_table_in(std::string_view text);
Expected<RainTable> read_rain_table(const std::filesystem::path& file);

}  // namespace yardwright
