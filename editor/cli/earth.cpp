// `yardwright earth`: the earth that a yard's pads, drives, swales and berms move, and the levels at which its pads would
// move least.
#include <fmt/format.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
#include "geom/ground/earth_balance.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

struct EarthWords {
  std::string file;
  std::optional<int> phase;
};

struct PadAnswer {
  const Item* item = nullptr;
  double level_m = 0;
  PadLevel least, balanced;
};

std::vector<PadAnswer> pads_of(const Site& site) {
  std::vector<PadAnswer> answers;
  for_each<Pad>(site, [&](const Item& item, const Pad& pad) {
    const auto least = least_earth_level(site, pad), balanced = balanced_level(site, pad);
    if (least && balanced) answers.push_back({&item, pad.level_m, *least, *balanced});
  });
  return answers;
}

Json as_json(const EarthBalance& balance) {
  return {{"cut_m3", balance.earth.cut_m3},
          {"fill_m3", balance.earth.fill_m3},
          {"fill_made_of_cut_m3", balance.made_of_cut_m3},
          {"cut_loaded_m3", balance.loose_m3},
          {"left_over_m3", balance.left_over_m3()}};
}

void print_lines(const Site& site, const EarthBalance& all, const std::vector<PadAnswer>& pads) {
  const auto volume = [&](double m3) { return text_of(m3, Quantity::volume, site.units); };
  const auto level = [&](double m) { return text_of(m, Quantity::length, site.units); };
  const double left_m3 = all.left_over_m3();
  fmt::print("{}\n\ncut {}, fill {}, in place\n", site.name, volume(all.earth.cut_m3), volume(all.earth.fill_m3));
  fmt::print("the cut makes {} of fill, and is {} loaded (shrink {:.0f} %, swell {:.0f} %)\n",
             volume(all.made_of_cut_m3), volume(all.loose_m3), 100 * site.ground.shrink_ratio,
             100 * site.ground.swell_ratio);
  fmt::print("{} of fill {}\n", volume(std::abs(left_m3)), left_m3 < 0 ? "must be brought" : "is left over");
  if (pads.empty()) return;
  fmt::print("\n{:<20}{:>12}{:>18}{:>18}{:>18}\n", "pad, alone", "level", "least earth at", "moves there",
             "balances at");
  for (const PadAnswer& pad : pads)
    fmt::print("{:<20}{:>12}{:>18}{:>18}{:>18}\n", title_of(*pad.item), level(pad.level_m), level(pad.least.level_m),
               volume(pad.least.balance.earth.cut_m3 + pad.least.balance.earth.fill_m3), level(pad.balanced.level_m));
}

void run(const EarthWords& words, Console& console) {
  const auto site = site_at(words.file, words.phase);
  if (!site) return refuse(site.error(), console);
  const DesignSurface surface = design_surface(*site);
  if (!surface.known())
    return refuse({{"the ground is not known", words.file, "import its levels first: yardwright ground"}}, console);
  const EarthBalance all = earth_balance(*site, surface);
  const std::vector<PadAnswer> pads = pads_of(*site);
  if (!console.json) return print_lines(*site, all, pads);
  Json out{{"site", site->name}, {"earth", as_json(all)}, {"pads", Json::array()}};
  for (const PadAnswer& pad : pads)
    out["pads"].push_back({{"item", pad.item->id.number},
                           {"level_m", pad.level_m},
                           {"least_earth_level_m", pad.least.level_m},
                           {"least_earth", as_json(pad.least.balance)},
                           {"balanced_level_m", pad.balanced.level_m},
                           {"balanced", as_json(pad.balanced.balance)}});
  write_json(out, 1);
}

}  // namespace

void add_earth_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<EarthWords>();
  CLI::App* verb =
      program.add_subcommand("earth", "the earth that the yard's grading moves, and the pads' best levels");
  verb->footer("example: yardwright earth NAME.yard\nShrink and swell of its earth are the yard's own (ground).");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
