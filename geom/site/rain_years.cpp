#include "geom/site/rain_years.hpp"

#include <algorithm>

namespace yardwright {

std::optional<double> rain_of_years(const RainTable& table, double years) {
  const auto row = std::ranges::find(table.rows, years, &RainOfYears::years);
  return row == table.rows.end() ? std::nullopt : std::optional{row->rain_m};
}

Storm with_rain_table(Storm storm, RainTable table) {
  storm.table = std::move(table);
  storm.two_year_rain_m = rain_of_years(storm.table, 2).value_or(storm.two_year_rain_m);
  storm.rain_m = rain_of_years(storm.table, storm.return_period_years).value_or(storm.rain_m);
  return storm;
}

}  // namespace yardwright
