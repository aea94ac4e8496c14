// `yardwright grow`: where the next bin can go, why not elsewhere, how many more fit, and what a taller leg would gain.
#include "geom/grow/grow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/site_place.hpp"
#include "editor/cli/verb.hpp"
#include "geom/grow/leg_heights.hpp"
#include "geom/grow/room.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;
using namespace grow;

constexpr int leg_steps = 6;

struct GrowWords {
  std::string file;
  std::optional<int> phase;
  std::string like, at;
  double diameter_m = 0, eave_m = 0;
  bool wet = false;
  std::size_t spots = 3;
  bool room = false, taller = false;
  unsigned seed = 1;
  std::size_t place = 0;
};

/// A yard that has been asked everything, and the newcomer.
struct Asked {
  Site site;
  Catalogs catalogs;
  Answers answers;
  Thing thing;
  std::optional<Newcomer> newcomer;
  Answer grow;
};

const Item* item_called(const Site& site, const std::string& name) {
  const auto found = std::ranges::find_if(
      site.items, [&](const Item& item) { return title_of(item) == name || std::to_string(item.id.number) == name; });
  return found == site.items.end() ? nullptr : &*found;
}

Expected<Thing> sought(const GrowWords& words, const Site& site) {
  Thing thing = next_bin(site);
  if (!words.like.empty()) {
    const Item* like = item_called(site, words.like);
    if (like == nullptr)
      return refused("nothing is called \"" + words.like + "\"", "--like", "give a thing's name or number");
    thing = like->thing;
  }
  Bin* bin = std::get_if<Bin>(&thing);
  const bool of_bins = words.diameter_m > 0 || words.eave_m > 0 || words.wet;
  if (bin == nullptr && of_bins)
    return refused("--diameter, --eave and --wet are of bins", "--like", "name a bin, or leave them out");
  if (bin == nullptr) return thing;
  if (words.diameter_m > 0) bin->diameter_m = words.diameter_m;
  if (words.eave_m > 0) bin->eave_height_m = words.eave_m;
  if (words.wet) bin->use = BinUse::wet_holding;
  return thing;
}

Expected<std::unique_ptr<Asked>> asked_of(const GrowWords& words) {
  auto in_time = site_in_time(words.file, words.phase);
  if (!in_time) return tl::unexpected{in_time.error()};
  auto thing = sought(words, in_time->site);
  if (!thing) return tl::unexpected{thing.error()};
  auto asked = std::make_unique<Asked>();
  asked->site = std::move(in_time->site);
  asked->thing = std::move(*thing);
  asked->catalogs = shipped_catalogs();
  asked->catalogs.rules = asked->catalogs.rules.with(asked->site.rule_overrides);
  asked->answers = check(asked->site, shipped_catalogs());
  const int phase = words.phase.value_or(static_cast<int>(asked->site.phases.size()) - 1);
  if (const auto one = newcomer(asked->site, asked->answers, asked->catalogs.rules, asked->thing, phase))
    asked->newcomer.emplace(*one);
  else
    return refused("a " + std::string{kind_label(asked->thing)} + " covers no ground", "--like",
                   "name a bin, dryer, building, tank or another thing that stands");
  asked->grow = ask(asked->site, asked->answers, asked->catalogs, &asked->thing, MendSearch{}, in_time->later);
  asked->grow.spots = best_spots(*asked->newcomer, asked->grow.region, words.spots);
  return asked;
}

Json place_as_json(SitePoint at) { return {{"east_m", at.x}, {"north_m", at.y}}; }

Json reasons_as_json(const std::vector<AtPlace>& reasons, const Site& site) {
  Json out = Json::array();
  for (const AtPlace& one : reasons)
    out.push_back({{"rule", one.reason->rule},
                   {"item", one.reason->item.number},
                   {"words", reason_words(*one.reason, site)},
                   {"verdict", names_of(Verdict{})[static_cast<std::size_t>(one.reason->worse)]},
                   {"inside_m", one.inside_m},
                   {"way_out", place_as_json(one.way_out)}});
  return out;
}

std::string place_words(SitePoint at, UnitSystem units) {
  return fmt::format("{} east, {} north", text_of(at.x, Quantity::length, units),
                     text_of(at.y, Quantity::length, units));
}

struct Taken {
  const KeepOff* reason;
  double area_m2;
};

/// How much of the lot each reason takes by itself, the most first.
std::vector<Taken> taken_by(const Asked& asked) {
  std::vector<Taken> all;
  const Region lot{Polygon{asked.site.lot.corners, {}}};
  for (const KeepOff& reason : asked.grow.region.reasons) {
    const double m2 = area_m2(common(united(reason.area), lot));
    if (m2 > 1) all.push_back({&reason, m2});
  }
  std::ranges::stable_sort(all, std::greater{}, &Taken::area_m2);
  return all;
}

void print_spots(const Asked& asked) {
  const UnitSystem units = asked.site.units;
  fmt::print("\n{}\n{}: its middle can lie on {} of free ground\n", asked.site.name,
             std::string{kind_label(asked.thing)} + ", " + size_words(asked.thing, units),
             text_of(asked.grow.free_m2, Quantity::area, units));
  std::size_t number = 0;
  for (const Spot& spot : asked.grow.spots) {
    fmt::print("{:>3}  {}, {} to spare any way{}\n", ++number, place_words(spot.at, units),
               text_of(spot.margin_m, Quantity::length, units), spot.free ? "" : " (advice speaks against it)");
    for (const AtPlace& near : nearest_reasons(asked.grow.region, spot.at, 2))
      fmt::print("       then it {}\n", reason_words(*near.reason, asked.site));
  }
}

void print_taken(const Asked& asked) {
  constexpr std::size_t most = 8;
  fmt::print("\nwhat takes the lot, each by itself:\n");
  std::size_t shown = 0;
  for (const Taken& one : taken_by(asked)) {
    if (++shown > most) break;
    fmt::print("{:>12}  it {}\n", text_of(one.area_m2, Quantity::area, asked.site.units),
               reason_words(*one.reason, asked.site));
  }
}

void print_place(const Asked& asked, SitePoint at) {
  const UnitSystem units = asked.site.units;
  const auto reasons = reasons_at(asked.grow.region, at);
  fmt::print("\nat {}: {}\n", place_words(at, units), reasons.empty() ? "it can stand there" : "it cannot stand there");
  if (!contains({asked.site.lot.corners, {}}, at)) fmt::print("     it lies off the lot\n");
  for (const AtPlace& one : reasons)
    fmt::print("     it {}{}; clear of that {} away\n", reason_words(*one.reason, asked.site),
               one.reason->worse == Verdict::fail ? "" : " (advice)", text_of(one.inside_m, Quantity::length, units));
}

void print_room(const Asked& asked, const Room& room) {
  fmt::print("\n{} more fit at once; no layout has more than {}\n", room.places.size(), room.at_most);
  std::size_t number = 0;
  for (const SitePoint& at : room.places) fmt::print("{:>3}  {}\n", ++number, place_words(at, asked.site.units));
}

void print_heights(const Asked& asked, const Item& leg, const std::vector<AtHeight>& heights) {
  const UnitSystem units = asked.site.units;
  fmt::print("\n{}, taller: {:>22}{:>16}{:>16}{:>12}\n", title_of(leg), "discharge", "reached", "free", "bins more");
  for (const AtHeight& one : heights)
    fmt::print("{:>38}{:>16}{:>16}{:>12}\n", text_of(one.discharge_m, Quantity::length, units),
               text_of(one.reached_m2, Quantity::area, units), text_of(one.free_m2, Quantity::area, units), one.bins);
  fmt::print("by a quick packing, on a distributor of {} outlets\n", outlets_of_taller_leg);
  if (const AtHeight* best = best_gain(heights))
    fmt::print("most for its height: {}\n", text_of(best->discharge_m, Quantity::length, units));
}

/// What else was asked for, as it is found.
struct More {
  std::optional<SitePoint> at;
  std::optional<Room> room;
  std::vector<std::pair<const Item*, std::vector<AtHeight>>> heights;
  std::optional<ItemId> placed;
};

Expected<More> more_of(const GrowWords& words, const Asked& asked) {
  More more;
  if (!words.at.empty()) {
    const auto at = site_place(words.at, "--at", asked.site.units);
    if (!at) return tl::unexpected{at.error()};
    more.at = *at;
  }
  if (words.room) more.room = room_for(*asked.newcomer, asked.grow.region, {.seed = words.seed});
  if (words.taller) {
    for_each<Leg>(asked.site, [&](const Item& item, const Leg&) {
      more.heights.push_back({&item, at_heights(*asked.newcomer, item.id, leg_steps)});
    });
  }
  return more;
}

void print_json(const Asked& asked, const More& more) {
  Json out{{"site", asked.site.name},       {"kind", kind_key(asked.thing)},
           {"free_m2", asked.grow.free_m2}, {"bearable_m2", area_m2(asked.grow.region.bearable)},
           {"spots", Json::array()},        {"taken", Json::array()},
           {"findings", Json::array()}};
  for (const Spot& spot : asked.grow.spots)
    out["spots"].push_back({{"at", place_as_json(spot.at)},
                            {"margin_m", spot.margin_m},
                            {"free", spot.free},
                            {"nearest", reasons_as_json(nearest_reasons(asked.grow.region, spot.at, 3), asked.site)}});
  for (const Taken& one : taken_by(asked))
    out["taken"].push_back({{"rule", one.reason->rule},
                            {"item", one.reason->item.number},
                            {"words", reason_words(*one.reason, asked.site)},
                            {"area_m2", one.area_m2}});
  for (const Finding& finding : asked.grow.findings) out["findings"].push_back(as_json(finding, asked.site.units));
  if (more.at)
    out["at"] = {{"place", place_as_json(*more.at)},
                 {"reasons", reasons_as_json(reasons_at(asked.grow.region, *more.at), asked.site)}};
  if (more.room) {
    out["room"] = {{"at_most", more.room->at_most}, {"places", Json::array()}};
    for (const SitePoint& at : more.room->places) out["room"]["places"].push_back(place_as_json(at));
  }
  for (const auto& [leg, heights] : more.heights) {
    for (const AtHeight& one : heights)
      out["taller"].push_back({{"leg", leg->id.number},
                               {"discharge_m", one.discharge_m},
                               {"reached_m2", one.reached_m2},
                               {"free_m2", one.free_m2},
                               {"bins", one.bins}});
  }
  if (more.placed) out["placed"] = more.placed->number;
  write_json(out, 1);
}

void print_text(const Asked& asked, const More& more) {
  print_findings("grow", asked.grow.findings, asked.site.units, true);
  print_spots(asked);
  print_taken(asked);
  if (more.at) print_place(asked, *more.at);
  if (more.room) print_room(asked, *more.room);
  for (const auto& [leg, heights] : more.heights) print_heights(asked, *leg, heights);
  if (more.placed) fmt::print("\nplaced as number {}\n", more.placed->number);
  print_caution();
}

/// Into the whole yard, not into the phase that was asked about; what it is numbered.
Expected<ItemId> place(const GrowWords& words, const Asked& asked) {
  if (words.place > asked.grow.spots.size())
    return refused(fmt::format("there are {} spots", asked.grow.spots.size()), "--place",
                   "give the number of one of them");
  const auto whole = load_site(words.file);
  if (!whole) return tl::unexpected{whole.error()};
  Newcomer here = *asked.newcomer;
  here.item.id = next_id(*whole);
  const Site placed = yardwright::apply(*whole, placed_at(here, asked.grow.spots[words.place - 1].at));
  if (const auto saved = save_site(placed, words.file); !saved) return tl::unexpected{saved.error()};
  return here.item.id;
}

void run(const GrowWords& words, Console& console) {
  const auto asked = asked_of(words);
  if (!asked) return refuse(asked.error(), console);
  auto more = more_of(words, **asked);
  if (!more) return refuse(more.error(), console);
  if (words.place > 0) {
    const auto placed = place(words, **asked);
    if (!placed) return refuse(placed.error(), console);
    more->placed = *placed;
  }
  if (console.json)
    print_json(**asked, *more);
  else
    print_text(**asked, *more);
  if (worst((*asked)->grow.findings) == Verdict::fail) console.exit_code = something_fails;
}

}  // namespace

void add_grow_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<GrowWords>();
  CLI::App* verb = program.add_subcommand("grow", "where can the next bin go, and what would it take?");
  verb->footer(
      "example: yardwright grow NAME.yard --diameter 42ft --eave 25ft --room\n"
      "exit code: 0 nothing fails, 1 something fails, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  verb->add_option("--like", words->like, "seek room for another of this thing (name or number); else the last bin");
  add_quantity(*verb, "--diameter", words->diameter_m, Quantity::length, "of the bin");
  add_quantity(*verb, "--eave", words->eave_m, Quantity::length, "of the bin, over its foundation");
  verb->add_flag("--wet", words->wet, "it holds wet grain: steeper spouts");
  verb->add_option("--spots", words->spots, "how many of the best spots to tell")->check(CLI::Range(1, 20));
  verb->add_option("--at", words->at, "why not here: \"120ft,340ft\" east and north");
  verb->add_flag("--room", words->room, "how many more fit at once");
  verb->add_option("--seed", words->seed, "of that search: the same seed finds the same places");
  verb->add_flag("--taller", words->taller, "what taller legs would gain");
  verb->add_option("--place", words->place, "put it on this spot, with its spout, and save the yard")
      ->check(CLI::Range(1, 20));
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
