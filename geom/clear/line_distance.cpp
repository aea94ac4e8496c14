#include "geom/clear/line_distance.hpp"

#include <algorithm>
#include <array>

namespace yardwright::clear {

namespace {

struct VoltageRow {
  double to_volts;
  std::string_view rule;
};
constexpr std::array table_a{
    VoltageRow{50e3, "clear.equipment-to-50kv"},   VoltageRow{200e3, "clear.equipment-to-200kv"},
    VoltageRow{350e3, "clear.equipment-to-350kv"}, VoltageRow{500e3, "clear.equipment-to-500kv"},
    VoltageRow{750e3, "clear.equipment-to-750kv"}, VoltageRow{1e6, "clear.equipment-to-1000kv"}};

bool clears(double port_m, double conductor_m, const RuleBook& rules) {
  return conductor_m >= port_m + rules.at("clear.line-probe").value - 1e-9;
}

}  // namespace

std::optional<double> portable_distance_m(double port_m, double conductor_m, const RuleBook& rules) {
  if (const Rule& whole = rules.at("clear.line-portable"); whole.own) return whole.value;
  if (clears(port_m, conductor_m, rules)) return std::nullopt;
  const double top_m = port_m + rules.at("clear.line-probe").value;
  const bool in_table = conductor_m <= rules.at("clear.line-ground").value + 1e-9;
  const double run_to_m = in_table ? std::min(conductor_m, rules.at("clear.line-table-foot").value) : conductor_m;
  return top_m + rules.at("clear.line-slope").value * (top_m - run_to_m);
}

std::optional<double> permanent_distance_m(double port_m, double conductor_m, const RuleBook& rules) {
  if (clears(port_m, conductor_m, rules)) return std::nullopt;
  return rules.at("clear.line-permanent").value;
}

double equipment_distance_m(double voltage_v, const RuleBook& rules) {
  for (const VoltageRow& row : table_a) {
    if (voltage_v <= row.to_volts) return rules.at(row.rule).value;
  }
  return rules.at(table_a.back().rule).value;
}

}  // namespace yardwright::clear
