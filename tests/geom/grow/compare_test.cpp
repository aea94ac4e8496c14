// Options side by side: what differs in words, and that a comparison says what the questions and quantities say.
#include "geom/grow/compare.hpp"

#include <catch2/catch.hpp>

#include "geom/grow/grow.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "geom/sheet/compare_page.hpp"
#include "geom/site/edit.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::scenes;
using grow::Differs;

namespace {

constexpr double ft = 0.3048;

std::vector<grow::Difference> between(const Site& from, const Site& to) {
  return grow::differences(from, to, shipped_catalogs().rules);
}

Site small_yard() {
  SceneBuilder yard{Site{.lot = rectangular_lot(200, 200)}};
  yard.add("North", Bin{.at = {50, 50}});
  yard.add("Way", Drive{.path = {{0, 0}, {100, 0}}});
  yard.add("", Leg{.at = {80, 80}});
  return yard.site();
}

Item& item(Site& site, int id) { return *std::ranges::find(site.items, ItemId{id}, &Item::id); }

std::string lone_words(const Site& to) {
  const auto found = between(small_yard(), to);
  REQUIRE(found.size() == 1);
  return found.front().words;
}

}  // namespace

TEST_CASE("between a yard and itself nothing differs") {
  for (const Site& site : {old_yard(), new_yard(), crowded_yard(7)}) CHECK(between(site, site).empty());
}

TEST_CASE("an item that is moved, changed or renamed is told with how much") {
  Site to = small_yard();
  std::get<Bin>(item(to, 1).thing).at = {50 + 30 * ft, 50 + 30 * ft};
  CHECK(lone_words(to) == "North: moved 42.4 ft to the north-east");  // 30 times the root of 2
  std::get<Bin>(item(to, 1).thing).diameter_m = 42 * ft;
  CHECK(lone_words(to) == "North: moved 42.4 ft to the north-east; diameter 36.0 ft becomes 42.0 ft");
  to = small_yard();
  item(to, 2).thing = moved(item(to, 2).thing, {0, -10 * ft});
  CHECK(lone_words(to) == "Way: moved 10.0 ft to the south");
  std::get<Drive>(item(to, 2).thing).path.push_back({100, 50});
  CHECK(lone_words(to).starts_with("Way: path drawn anew, 3 corners over "));
  to = small_yard();
  std::get<Leg>(item(to, 3).thing).boot.depth_m = 10 * ft;
  CHECK(lone_words(to) == "leg 3: boot pit, pit depth 8.0 ft becomes 10.0 ft");
  to = small_yard();
  item(to, 1).name = "South";
  item(to, 1).phase = 1;
  CHECK(lone_words(to) == "North: named \"South\"; built in phase 1 instead of 0");
  to = small_yard();
  std::get<Bin>(item(to, 1).thing).use = BinUse::wet_holding;
  CHECK(lone_words(to) == "North: use dry-store becomes wet-holding");
  // A change that rounds away in print is printed with all its digits.
  to = small_yard();
  std::get<Bin>(item(to, 1).thing).diameter_m = 36.01 * ft;
  CHECK(lone_words(to) == "North: diameter 36 ft becomes 36.01 ft");
}

TEST_CASE("items added, gone and put in another's place, and the yard's own parts are told") {
  Site to = small_yard();
  to.items.erase(to.items.begin());
  to.items.push_back({{9}, "", 0, {}, Bin{}});
  item(to, 3).thing = Scale{};
  to.storm.rain_m = 6 * 0.0254;
  to.lot = rectangular_lot(300, 200);
  to.rule_overrides = {{"clear.bin-bin", 10 * ft, Basis::local, "test"}};
  const auto found = between(small_yard(), to);
  std::vector<std::pair<Differs, std::string>> told;
  for (const grow::Difference& one : found) told.emplace_back(one.how, one.words);
  CHECK(told == std::vector<std::pair<Differs, std::string>>{
                    {Differs::gone, "North (bin) is gone"},
                    {Differs::gone, "leg 3 is gone"},
                    {Differs::added, "scale 3 is added"},
                    {Differs::added, "bin 9 is added"},
                    {Differs::yard, "the lot is another one: 14.8 ac instead of 9.88 ac"},
                    {Differs::yard, "the storm: 24-hour rain 5.00 in becomes 6.00 in"},
                    {Differs::yard, "rule \"bin to bin, wall to wall\" 6.0 ft becomes 10.0 ft"}});
}

TEST_CASE("of thrown yards, as many items are told as differ") {
  const unsigned seed = Catch::rngSeed() + 3;
  CAPTURE(seed);
  for (unsigned i = 0; i < 20; ++i) {
    const Site from = crowded_yard(seed + i);
    Site to = from;
    for (std::size_t at = 0; at < to.items.size(); at += 3) to.items[at].thing = moved(to.items[at].thing, {1, 2});
    std::size_t moved_things = 0;
    for (std::size_t at = 0; at < to.items.size(); ++at) moved_things += to.items[at] != from.items[at];
    const auto found = between(from, to);
    CHECK(found.size() == moved_things);
    for (const grow::Difference& one : found)
      CHECK(one.words.find("moved 7.3 ft to the north-east") != std::string::npos);
  }
}

TEST_CASE("a comparison says what the questions and the quantities say") {
  const Site site = old_yard();
  Site other = site;
  other.items.pop_back();
  const Catalogs& catalogs = shipped_catalogs();
  const int last = static_cast<int>(site.phases.size()) - 1;
  const grow::Comparison both = grow::compare({{"a", site, last}, {"b", other, last}}, shipped_price_book(), catalogs);
  REQUIRE(both.options.size() == 2);
  const grow::Option& first = both.options.front();
  const Site built = as_of(site, last);
  const Answers answers = grow::with_growth(check(built, catalogs), built, catalogs);
  for (const grow::Standing& standing : first.standings) {
    const Findings& findings = findings_of(answers, standing.question);
    CHECK(standing.worst == worst(findings));
    CHECK(standing.fails + standing.cautions + standing.not_checked + standing.passes == int(findings.size()));
    if (standing.nearest && standing.fails > 0) CHECK(standing.nearest->verdict == Verdict::fail);
  }
  CHECK(first.all == grow::quantities(as_of(site, last), answers.surface, catalogs));
  CHECK(first.cost_of_built.sum < first.cost_of_all.sum);
  CHECK(first.differences.empty());
  CHECK(both.options.back().differences.size() == 1);
  for (const grow::ComparedRow& row : grow::compared_rows(both, catalogs)) CHECK(row.cells.size() == 2);
}

TEST_CASE("the page of a comparison holds every plan at one scale and every word under them") {
  const Site site = old_yard();
  const Catalogs& catalogs = shipped_catalogs();
  for (std::size_t count = 2; count <= 4; ++count) {
    std::vector<grow::Version> versions(count, {"version", site, 1});
    const Page page = compare_page(grow::compare(versions, shipped_price_book(), catalogs), catalogs);
    CHECK(page.drawings.size() == count + 3);
    std::vector<double> scales;
    std::string words;
    for (const PlacedDrawing& placed : page.drawings) {
      if (placed.window) scales.push_back(placed.placement.per_unit);
      for (const Mark& mark : placed.drawing.marks) {
        const TextMark* text = std::get_if<TextMark>(&mark);
        if (text == nullptr) continue;
        words += text->text + "\n";
        if (!placed.drawing.y_up) CHECK(text->at.y < page.height_mm - 5);
      }
    }
    CHECK(scales == std::vector<double>(count, scales.front()));
    CHECK(words.find("invented prices") != std::string::npos);
  }
}
