// `yardwright cost`: what a yard takes to build, and what that costs by a price book.
#include "geom/grow/cost.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/priced_site.hpp"
#include "editor/cli/quantity_json.hpp"
#include "editor/cli/verb.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

struct CostWords {
  std::string file, prices, write_prices;
  std::optional<int> phase, from, to;
  bool items = false;
};

/// The state that is told, and what is built and taken away for it.
struct Told {
  Site site;
  std::string states;  ///< "as of today", "from today to the next bin"
  grow::QuantityChange change;
  grow::Cost cost;
};

std::string phase_name(const Site& site, int phase) {
  const auto index = static_cast<std::size_t>(phase);
  return index < site.phases.size() ? site.phases[index] : fmt::format("phase {}", phase);
}

Expected<Told> between_phases(const CostWords& words) {
  if (!words.from || !words.to)
    return refused("one phase alone is given", words.from ? "--from-phase" : "--to-phase",
                   "give both --from-phase and --to-phase");
  if (*words.from >= *words.to)
    return refused(fmt::format("phase {} does not come before phase {}", *words.from, *words.to), "--from-phase",
                   "give the earlier phase first");
  const auto before = built_site(words.file, words.from, "--from-phase");
  if (!before) return tl::unexpected{before.error()};
  auto after = built_site(words.file, words.to, "--to-phase");
  if (!after) return tl::unexpected{after.error()};
  const std::string states =
      fmt::format("from \"{}\" to \"{}\"", phase_name(*before, *words.from), phase_name(*after, *words.to));
  auto change = grow::quantity_change(*before, *after, shipped_catalogs());
  return Told{*std::move(after), states, std::move(change), {}};
}

Expected<Told> told_by(const CostWords& words) {
  if (words.from || words.to) return between_phases(words);
  auto site = built_site(words.file, words.phase);
  if (!site) return tl::unexpected{site.error()};
  const int phase = words.phase.value_or(static_cast<int>(site->phases.size()) - 1);
  const std::string states = fmt::format("all that stands once \"{}\" is built", phase_name(*site, phase));
  grow::Quantities all = grow::quantities(*site, design_surface(*site), shipped_catalogs());
  return Told{*std::move(site), states, {std::move(all), {}}, {}};
}

void print_line(const grow::CostLine& line, const Told& told, const PriceBook& book, bool items) {
  const UnitSystem units = told.site.units;
  fmt::print("{:<34}{:>18}{:>7}{:>14}{:>22}{:>14}\n", measure_of(line.line.work).words,
             grow::size_words(line.line, units), line.line.count(), grow::amount_words(line.line, line.price, units),
             grow::price_words(line.price, book), grow::sum_words(line.sum));
  if (items) fmt::print("    {}\n", grow::item_words(line.line, told.site));
}

void print_text(const Told& told, const PriceBook& book, bool items) {
  fmt::print("{}, {}\n", told.site.name, told.states);
  fmt::print("prices: {}\n\n", grow::book_words(book));
  fmt::print("{:<34}{:>18}{:>7}{:>14}{:>22}{:>14}\n", "work", "size", "count", "amount", "price", book.currency);
  for (const grow::CostLine& line : told.cost.lines) print_line(line, told, book, items);
  fmt::print("\nsum: {}{}\n", grow::total_words(told.cost, book), book.invented ? ", by invented prices" : "");
  if (!told.change.gone.lines.empty()) fmt::print("\ntaken away, not priced:\n");
  for (const grow::QuantityLine& line : told.change.gone.lines)
    fmt::print("{:<34}{:>18}{:>7}{:>14}\n", measure_of(line.work).words, grow::size_words(line, told.site.units),
               line.count(), grow::amount_words(line, {}, told.site.units));
  for (const grow::LeftOut& left_out : told.change.built.left_out)
    fmt::print("\nnot counted: {}\n", grow::left_out_words(left_out, told.site));
  print_caution();
}

void print_json(const Told& told, const PriceBook& book) {
  Json out{{"site", told.site.name}, {"states", told.states}, {"prices", as_json(book)}};
  out["lines"] = as_json(told.cost);
  out["sum"] = told.cost.sum;
  out["without_price"] = told.cost.without_price;
  out["gone"] = Json::array();
  for (const grow::QuantityLine& line : told.change.gone.lines) out["gone"].push_back(as_json(line));
  out["not_counted"] = Json::array();
  for (const grow::LeftOut& left_out : told.change.built.left_out)
    out["not_counted"].push_back({{"item", left_out.item.number}, {"why", left_out.why}});
  write_json(out, 1);
}

void write_prices(const std::string& file, Console& console) {
  std::error_code none;
  if (std::filesystem::exists(file, none))
    return refuse({{"is there already", file, "choose another name, or remove it first"}}, console);
  const auto written = write_whole_file(file, shipped_price_book_text());
  if (!written) return refuse(written.error(), console);
  if (console.json) return write_json({{"file", file}, {"prices", as_json(shipped_price_book())}});
  fmt::print("{}: {}\nPut your own quotes in, then set \"invented\" to false.\n", file,
             grow::book_words(shipped_price_book()));
}

void run(const CostWords& words, Console& console) {
  if (!words.write_prices.empty()) return write_prices(words.write_prices, console);
  if (words.phase && (words.from || words.to))
    return refuse(
        {{"a phase and a span of phases are given", "--phase", "give --phase, or --from-phase and --to-phase"}},
        console);
  auto told = told_by(words);
  if (!told) return refuse(told.error(), console);
  const auto book = prices_for(words.file, words.prices);
  if (!book) return refuse(book.error(), console);
  told->cost = grow::cost_of(told->change.built, *book);
  console.json ? print_json(*told, *book) : print_text(*told, *book, words.items);
}

}  // namespace

void add_cost_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<CostWords>();
  CLI::App* verb = program.add_subcommand("cost", "what the yard takes to build, and what that costs by a price book");
  verb->footer(
      "example: yardwright cost NAME.yard --from-phase 0 --to-phase 1\n"
      "Shipped prices are invented. --write-prices NAME.prices.json writes them out, to put your own quotes in;\n"
      "beside NAME.yard that file is read by itself.");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "all that stands once this phase is built; the last where not given");
  verb->add_option("--from-phase", words->from, "what is built after this phase ...");
  verb->add_option("--to-phase", words->to, "... up to this one");
  verb->add_option("--prices", words->prices,
                   "a price book; else NAME.prices.json beside the yard, else the shipped one");
  verb->add_option("--write-prices", words->write_prices, "write the shipped price book to this file, and no more");
  verb->add_flag("--items", words->items, "list what each line is made of");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
