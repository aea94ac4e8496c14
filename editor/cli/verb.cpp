#include "editor/cli/verb.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

constexpr double largest_si = 1e9;  // of any quantity on the command line: answers stay far from overflow

}  // namespace

void write_json(const nlohmann::ordered_json& out, int indent) {
  fmt::print("{}\n", out.dump(indent, ' ', false, nlohmann::json::error_handler_t::replace));
}

void refuse(const Problems& problems, Console& console) {
  nlohmann::ordered_json out{{"problems", nlohmann::ordered_json::array()}};
  for (const Problem& problem : problems) {
    fmt::print(stderr, "yardwright: {}\n", sentence(problem));
    out["problems"].push_back({{"where", problem.where}, {"what", problem.what}, {"do", problem.mend}});
  }
  if (console.json) write_json(out);
  console.exit_code = bad_input;
}

CLI::Option* add_quantity(CLI::App& verb, const std::string& name, double& si, Quantity quantity,
                          const std::string& help, UnitSystem bare) {
  const auto read = [&si, quantity, bare, name](const std::string& text) {
    auto value = parse_quantity(text, quantity, bare);
    if (value && std::abs(*value) > largest_si) {
      value = tl::unexpected{Problem{fmt::format("{} is beyond any yard", text), "", "give a smaller number"}};
    }
    if (!value) {
      value.error().where = name;
      throw RefusedOption{value.error()};
    }
    si = *value;
  };
  const Unit& unit = shown_unit(quantity, bare);
  return verb.add_option_function<std::string>(name, read, help)
      ->type_name(std::string{unit.suffix.empty() ? "NUMBER" : unit.suffix});
}

}  // namespace yardwright::cli
