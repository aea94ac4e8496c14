// `yardwright phases`: a yard phase by phase, and what of the phases before is in the way of each.
#include "geom/grow/phases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/phases_print.hpp"
#include "editor/cli/priced_site.hpp"
#include "editor/cli/verb.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "geom/sheet/compare_page.hpp"
#include "geom/sheet/sheet_file.hpp"

namespace yardwright::cli {

namespace {

struct PhasesWords {
  std::string file, prices, picture;
};

Problems draw(const std::string& picture, const grow::PhasePlan& plan) {
  if (picture.empty()) return {};
  const auto written = write_pages({compare_page(plan.comparison, shipped_catalogs())}, picture, "Phases side by side");
  return written ? Problems{} : written.error();
}

void run(const PhasesWords& words, Console& console) {
  const auto whole = load_site(words.file);
  if (!whole) return refuse(whole.error(), console);
  const auto book = prices_for(words.file, words.prices);
  if (!book) return refuse(book.error(), console);
  const grow::PhasePlan plan = grow::phases_of(*whole, *book, shipped_catalogs());
  if (const Problems problems = draw(words.picture, plan); !problems.empty()) return refuse(problems, console);
  console.json ? print_json(plan, *whole, words.picture) : print_text(plan, *whole);
  if (fails_newly(plan)) console.exit_code = something_fails;
}

}  // namespace

void add_phases_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<PhasesWords>();
  CLI::App* verb =
      program.add_subcommand("phases", "does each phase pass on its own, and leave the later ones possible?");
  verb->footer(
      "example: yardwright phases NAME.yard --picture phases.pdf\n"
      "exit code: 0 nothing fails newly in any phase, 1 something does, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--prices", words->prices,
                   "a price book; else NAME.prices.json beside the yard, else the shipped one");
  verb->add_option("--picture", words->picture, "the phases side by side, drawn: .pdf, .svg or .png");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
