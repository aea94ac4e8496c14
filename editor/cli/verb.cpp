#include "editor/cli/verb.hpp"

#include <fmt/format.h>

#include <cstdio>

#include "geom/units/text.hpp"

namespace yardwright::cli {

void refuse(const Problems& problems, Console& console) {
  for (const Problem& problem : problems) fmt::print(stderr, "yardwright: {}\n", sentence(problem));
  console.exit_code = bad_input;
}

CLI::Option* add_quantity(CLI::App& verb, const std::string& name, double& si, Quantity quantity, const std::string& help,
                          UnitSystem bare) {
  const auto read = [&si, quantity, bare, name](const std::string& text) {
    auto value = parse_quantity(text, quantity, bare);
    if (!value) {
      value.error().where = name;
      throw CLI::ValidationError{sentence(value.error())};
    }
    si = *value;
  };
  const Unit& unit = shown_unit(quantity, bare);
  return verb.add_option_function<std::string>(name, read, help)->type_name(std::string{unit.suffix.empty() ? "NUMBER" : unit.suffix});
}

}  // namespace yardwright::cli
