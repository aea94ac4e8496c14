#include "editor/cli/ask.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

nlohmann::ordered_json as_json(const AskedValue& value) {
  if (!value.words.empty()) return {{"words", value.words}};
  nlohmann::ordered_json out;
  const Unit& si = units_of(value.quantity).front();
  out["value"] = value.si;
  out["unit"] = si.suffix;
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
    const Unit& unit = shown_unit(value.quantity, system);
    if (unit.suffix == si.suffix || unit.suffix.empty()) continue;
    out[std::string{unit.suffix}] = value.si / unit.factor;
  }
  return out;
}

void print_line(const AskedValue& value) {
  const std::string us = text_of(value.si, value.quantity, UnitSystem::us);
  const std::string metric = text_of(value.si, value.quantity, UnitSystem::metric);
  if (!value.words.empty())
    fmt::print("{:<22} {}\n", value.name, value.words);
  else if (us == metric)
    fmt::print("{:<22} {}\n", value.name, us);
  else
    fmt::print("{:<22} {}  ({})\n", value.name, us, metric);
}

}  // namespace

void print(const Asked& asked, const Console& console) {
  if (console.json) {
    nlohmann::ordered_json out{{"question", asked.question}, {"answers", nlohmann::ordered_json::object()}};
    for (const AskedValue& value : asked.answers) out["answers"][value.name] = as_json(value);
    out["basis"] = asked.basis;
    write_json(out);
    return;
  }
  for (const AskedValue& value : asked.answers) print_line(value);
  fmt::print("basis: {}\n", asked.basis);
}

void add_ask_verb(CLI::App& program, Console& console) {
  CLI::App* ask = program.add_subcommand("ask", "answer one question without a site");
  ask->footer("example: yardwright ask spout --discharge 80ft --drop 6ft --inlet 36ft --run 60ft --state wet");
  ask->require_subcommand(1);
  add_ask_spout(*ask, console);
  add_ask_runoff(*ask, console);
  add_ask_manning(*ask, console);
  add_ask_bin(*ask, console);
  add_ask_line(*ask, console);
  add_ask_turn(*ask, console);
  add_ask_uplift(*ask, console);
}

}  // namespace yardwright::cli
