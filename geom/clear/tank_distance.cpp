#include "geom/clear/tank_distance.hpp"

#include <array>
#include <limits>
#include <span>

namespace yardwright::clear {

namespace {

constexpr double us_gallon_m3 = 231 * 0.0254 * 0.0254 * 0.0254;
constexpr double whole_gallon_m3 = us_gallon_m3 * 1e-6;  // a plate's gallons are not exact in cubic metres
constexpr double no_end = std::numeric_limits<double>::infinity();

struct Row {
  double to_gallons;  ///< the largest capacity of the class
  std::string_view rule;
};

constexpr std::array lp_above_ground{Row{124.999, "clear.lp-under-125"},  Row{500, "clear.lp-to-500"},
                                     Row{2000, "clear.lp-to-2000"},       Row{30000, "clear.lp-to-30000"},
                                     Row{70000, "clear.lp-to-70000"},     Row{90000, "clear.lp-to-90000"},
                                     Row{120000, "clear.lp-to-120000"},   Row{200000, "clear.lp-to-200000"},
                                     Row{1000000, "clear.lp-to-1000000"}, Row{no_end, "clear.lp-over-1000000"}};
constexpr std::array lp_underground{Row{500, "clear.lp-buried-to-500"}, Row{2000, "clear.lp-buried-to-2000"},
                                    Row{no_end, "clear.lp-buried-over-2000"}};
constexpr std::array lp_between{Row{250, "clear.lp-between-to-250"}, Row{2000, "clear.lp-between-to-2000"},
                                Row{no_end, "clear.lp-between-over-2000"}};
constexpr std::array ammonia_line{Row{2000, "clear.ammonia-line-to-2000"}, Row{no_end, "clear.ammonia-line-over-2000"}};

const Rule& row_for(std::span<const Row> rows, double water_capacity_m3, const RuleBook& rules) {
  for (const Row& row : rows) {
    if (water_capacity_m3 <= row.to_gallons * us_gallon_m3 + whole_gallon_m3) return rules.at(row.rule);
  }
  return rules.at(rows.back().rule);
}

}  // namespace

const Rule& lp_building_rule(double water_capacity_m3, bool underground, const RuleBook& rules) {
  if (underground) return row_for(lp_underground, water_capacity_m3, rules);
  return row_for(lp_above_ground, water_capacity_m3, rules);
}

const Rule& lp_between_rule(double water_capacity_m3, const RuleBook& rules) {
  return row_for(lp_between, water_capacity_m3, rules);
}

bool spaced_by_diameter(double water_capacity_m3) { return water_capacity_m3 > 30000 * us_gallon_m3 + whole_gallon_m3; }

const Rule& ammonia_line_rule(double water_capacity_m3, const RuleBook& rules) {
  return row_for(ammonia_line, water_capacity_m3, rules);
}

}  // namespace yardwright::clear
