#include "geom/drain/recurrence.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace yardwright::drain {

Recurrence recurrence_of(const RainTable& table, const std::function<bool(double rain_m)>& happens) {
  const auto first =
      std::ranges::partition_point(table.rows, [&](const RainOfYears& row) { return !happens(row.rain_m); });
  Recurrence recurrence;
  if (first != table.rows.end()) recurrence.at_most_years = first->years;
  if (first != table.rows.begin()) recurrence.at_least_years = (first - 1)->years;
  return recurrence;
}

double chance_ratio(double every_years, double over_years) { return -std::expm1(-over_years / every_years); }

std::string recurrence_words(const Recurrence& recurrence, double over_years) {
  const auto chance = [&](double years) {
    const double percent = 100 * chance_ratio(years, over_years);
    return percent < 99.5 ? fmt::format("a chance of {:.0f} % in {:g} years", percent, over_years)
                          : fmt::format("all but certain in {:g} years", over_years);
  };
  if (!recurrence.at_most_years)
    return fmt::format("less than once in {:g} years, {} at most", *recurrence.at_least_years,
                       chance(*recurrence.at_least_years));
  if (!recurrence.at_least_years)
    return fmt::format("once in {:g} year{} or more often", *recurrence.at_most_years,
                       *recurrence.at_most_years == 1 ? "" : "s");
  return fmt::format("about once in {:g} years, {}", *recurrence.at_most_years, chance(*recurrence.at_most_years));
}

}  // namespace yardwright::drain
