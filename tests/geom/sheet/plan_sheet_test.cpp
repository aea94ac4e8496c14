#include "geom/sheet/plan_sheet.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <regex>

#include "geom/io/catalogs.hpp"
#include "geom/sheet/cairo_device.hpp"
#include "geom/sheet/marks.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

constexpr double place_mm = 0.01;  ///< a hundredth of a millimetre on paper

/// A yard with a dimension line of exactly 100 ft.
Site hundred_foot_yard() {
  Site site;
  site.lot = rectangular_lot(100 * foot_m, 60 * foot_m);
  site.items = {{{1}, "", 0, {}, Dimension{{{0, 10}, {100 * foot_m, 10}}}}};
  return site;
}

/// The answers of a yard of which only these findings are known.
Answers answers_with(const Site& site, const Findings& findings) {
  Answers answers;
  answers.surface = design_surface(site);
  answers.reach = std::make_shared<reach::Answer>(reach::Answer{findings, {}, {}});
  return answers;
}

std::vector<Page> sheets_of(const Site& site, const SheetOptions& options, const Findings& findings = {}) {
  auto pages = plan_sheets(site, answers_with(site, findings), shipped_catalogs(), options);
  REQUIRE(pages.has_value());
  return std::move(*pages);
}

std::string all_words(const std::vector<Page>& pages) {
  std::string words;
  for (const Page& page : pages) {
    for (const PlacedDrawing& placed : page.drawings) {
      for (const Mark& mark : placed.drawing.marks) {
        if (const TextMark* text = std::get_if<TextMark>(&mark)) words += text->text + "\n";
      }
    }
  }
  return words;
}

/// The words' box on the paper, for words that are not turned.
SheetBox box_of_words(const TextMark& text, const PlacedDrawing& placed, const TextMeasure& measure) {
  const double wide = measure.width_mm(text.text, text.height_mm, text.bold);
  const double left = text.anchor == Anchor::left ? 0 : text.anchor == Anchor::right ? -wide : -wide / 2;
  const SheetPoint at =
      on_paper(placed.placement, placed.drawing.y_up, text.at) + SheetVector{text.offset_mm.x + left, text.offset_mm.y};
  return {{at.x, at.y - text.height_mm / 2}, {at.x + wide, at.y + text.height_mm / 2}};
}

Finding failing_finding() {
  Finding finding;
  finding.id = "reach.slope-dry:2";
  finding.verdict = Verdict::fail;
  finding.title = "Spout to North 2 is too flat";
  finding.measured = 3;
  finding.required = 5;
  finding.margin = -2;
  finding.place = {{10, 10}};
  finding.mends = {{"raise Leg 1", Quantity::length, 5.3, 30.5, {}}};
  return finding;
}

}  // namespace

TEST_CASE("A 100 ft line at 1 in = 20 ft is 5 in on the paper, through the placement") {
  SheetOptions options;
  options.scale_ratio = 240;
  const std::vector<Page> pages = sheets_of(hundred_foot_yard(), options);
  const PlacedDrawing& plan = pages.front().drawings.at(1);
  const SheetPoint from = on_paper(plan.placement, plan.drawing.y_up, on_plan(SitePoint{0, 10}));
  const SheetPoint to = on_paper(plan.placement, plan.drawing.y_up, on_plan(SitePoint{100 * foot_m, 10}));
  CHECK(distance(from, to) == Approx(5 * 25.4).margin(place_mm));
}

TEST_CASE("A 100 ft line at 1 in = 20 ft is 5 in in the SVG's own coordinates") {
  SheetOptions options;
  options.scale_ratio = 240;
  const auto svg = svg_of(sheets_of(hundred_foot_yard(), options).front());
  REQUIRE(svg.has_value());
  CHECK(svg->find("width=\"431.8mm\"") != std::string::npos);
  const std::regex segment{R"re(d="M ([0-9.]+) ([0-9.]+) L ([0-9.]+) ([0-9.]+)\s*")re"};
  bool found = false;
  for (std::sregex_iterator match{svg->begin(), svg->end(), segment}, end; match != end; ++match) {
    const double wide = std::abs(std::stod((*match)[3]) - std::stod((*match)[1]));
    found = found || std::abs(wide - 5 * 25.4) < place_mm;
  }
  CHECK(found);
}

TEST_CASE("No words of the demo yards leave the frame of any paper") {
  const TextMeasure measure;
  for (const Site& site : {scenes::old_yard(), scenes::new_yard()}) {
    for (const Paper paper : {Paper::letter, Paper::tabloid, Paper::ansi_d, Paper::a4, Paper::a3, Paper::a1}) {
      for (const Orientation orientation : {Orientation::landscape, Orientation::portrait}) {
        const Findings findings(40, failing_finding());
        for (const Page& page : sheets_of(site, {paper, orientation}, findings)) {
          for (const PlacedDrawing& placed : page.drawings) {
            for (const Mark& mark : placed.drawing.marks) {
              const TextMark* text = std::get_if<TextMark>(&mark);
              if (text == nullptr || text->turn_deg != 0 || placed.window) continue;
              const SheetBox box = box_of_words(*text, placed, measure);
              INFO(text->text << " on " << page.name);
              CHECK(box.low.x >= 7.9);
              CHECK(box.high.x <= page.width_mm - 7.9);
              CHECK(box.low.y >= 7.9);
              CHECK(box.high.y <= page.height_mm - 7.9);
            }
          }
        }
      }
    }
  }
}

TEST_CASE("A yard that does not fit at the wanted scale is refused with one at which it does") {
  SheetOptions options;
  options.paper = Paper::letter;
  options.scale_ratio = 12;
  const auto pages = plan_sheets(hundred_foot_yard(), {}, shipped_catalogs(), options);
  REQUIRE_FALSE(pages.has_value());
  CHECK(pages.error().front().mend.find("1 in = ") != std::string::npos);
}

TEST_CASE("A finding's words, its mend, the scale and the cautions stand on the sheets") {
  SheetOptions options;
  options.scale_ratio = 240;
  const std::string words = all_words(sheets_of(hundred_foot_yard(), options, {failing_finding()}));
  for (const char* part : {"Spout to North 2", "short by 6.6 ft", "raise Leg 1", "1 in = 20 ft", "Overhead lines",
                           "Confined spaces", "Entrapment"}) {
    INFO(part);
    CHECK(words.find(part) != std::string::npos);
  }
}

TEST_CASE("The number of a finding stands in one piece on every paper") {
  for (const Paper paper : {Paper::letter, Paper::a4, Paper::a1}) {
    const std::string words =
        all_words(sheets_of(hundred_foot_yard(), {paper, Orientation::portrait}, Findings(120, failing_finding())));
    for (const char* number : {"\n7\n", "\n66\n", "\n120\n"}) CHECK(words.find(number) != std::string::npos);
  }
}

TEST_CASE("A question that gave no finding is said to be not judged") {
  const std::string words = all_words(sheets_of(hundred_foot_yard(), {}, {failing_finding()}));
  CHECK(words.find("it was not judged") != std::string::npos);
}

TEST_CASE("Each question has a plan of its own where it has something to draw; the sheets are numbered through") {
  const Site site = scenes::old_yard();
  const auto pages = plan_sheets(site, check(site, shipped_catalogs()), shipped_catalogs());
  REQUIRE(pages.has_value());
  std::vector<std::string> names;
  for (std::size_t i = 0; i < pages->size(); ++i) {
    names.push_back((*pages)[i].name);
    CHECK(all_words({(*pages)[i]}).find(fmt::format("{} of {}\n", i + 1, pages->size())) != std::string::npos);
  }
  names.erase(std::unique(names.begin(), names.end()), names.end());
  CHECK(names == std::vector<std::string>{"General plan", "Reach", "Turn", "Drain", "Clear", "Pace", "Grow", "Sections",
                                          "Schedules", "Quantities and cost", "Drainage", "Findings", "Cautions"});
}

TEST_CASE("Every failing finding with a place has its number on the general plan and on its question's") {
  const Site site = scenes::old_yard();
  const Answers answers = check(site, shipped_catalogs());
  const Findings findings = all_findings(answers);
  const auto pages = plan_sheets(site, answers, shipped_catalogs());
  REQUIRE(pages.has_value());
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].verdict != Verdict::fail || findings[i].place.empty()) continue;
    INFO(findings[i].id);
    const std::regex number{"(^|\n)([0-9]+, )*" + std::to_string(i + 1) + "(, [0-9]+)*\n"};
    int plans = 0;
    for (const Page& page : *pages) {
      if (page.drawings.size() == 3)
        plans += std::regex_search(all_words({{"", 0, 0, {}, {page.drawings[1]}}}), number);
    }
    CHECK(plans == 2);
  }
}

TEST_CASE("On no paper does one name of the general plan lie on another") {
  const TextMeasure measure;
  for (const Site& site : {scenes::old_yard(), scenes::new_yard()}) {
    for (const Paper paper : {Paper::letter, Paper::tabloid, Paper::ansi_d, Paper::a4, Paper::a3, Paper::a1}) {
      SheetOptions options;
      options.paper = paper;
      const auto pages = plan_sheets(site, check(site, shipped_catalogs()), shipped_catalogs(), options);
      REQUIRE(pages.has_value());
      const PlacedDrawing& plan = pages->front().drawings[1];
      std::vector<std::pair<std::string, SheetBox>> said;
      for (const Mark& mark : plan.drawing.marks) {
        const TextMark* text = std::get_if<TextMark>(&mark);
        if (text == nullptr || text->turn_deg != 0) continue;
        const SheetBox box = box_of_words(*text, plan, measure);
        for (const auto& [other, taken] : said) {
          INFO(text->text << " on " << other << ", paper " << names_of(paper)[static_cast<std::size_t>(paper)]);
          const bool apart = box.low.x > taken.high.x || taken.low.x > box.high.x || box.low.y > taken.high.y ||
                             taken.low.y > box.high.y;
          CHECK(apart);
        }
        said.emplace_back(text->text, box);
      }
      CHECK(said.size() > 10);
    }
  }
}

TEST_CASE("Every bin's size stands on the general plan of the smallest paper") {
  const Site site = scenes::old_yard();
  SheetOptions options;
  options.paper = Paper::letter;
  const auto pages = plan_sheets(site, check(site, shipped_catalogs()), shipped_catalogs(), options);
  REQUIRE(pages.has_value());
  const std::string words = all_words({{"", 0, 0, {}, {pages->front().drawings[1]}}});
  for (const char* size : {"North 1\n36 ft · 20.7k bu", "North 2\n36 ft · 20.7k bu", "West\n30 ft · 13.1k bu",
                           "Wet bin\n24 ft", "Next bin\n48 ft"}) {
    INFO(size);
    CHECK(words.find(size) != std::string::npos);
  }
}

TEST_CASE("Quantities stand in the plan set, and money only by a yard's own prices") {
  const Site site = scenes::old_yard();
  const PriceBook own{"Quotes of March", "2026-03-01", "EUR", false, {{Work::leg, {}, 125000, "each", 0, "a quote"}}};
  PriceBook invented = own;
  invented.invented = true;
  const auto words_with = [&](std::optional<PriceBook> prices) {
    SheetOptions options;
    options.prices = std::move(prices);
    const auto pages = plan_sheets(site, check(site, shipped_catalogs()), shipped_catalogs(), options);
    REQUIRE(pages.has_value());
    return all_words(*pages);
  };
  for (const std::string& words : {words_with({}), words_with(invented)}) {
    CHECK(words.find("bin foundations, concrete") != std::string::npos);
    CHECK(words.find("the shipped prices are invented") != std::string::npos);
    CHECK(words.find("125,000") == std::string::npos);
    CHECK(words.find("no price\n") == std::string::npos);
  }
  const std::string priced = words_with(own);
  CHECK(priced.find("Quotes of March (2026-03-01, EUR)") != std::string::npos);
  CHECK(priced.find("125,000 EUR each") != std::string::npos);
  CHECK(priced.find("no price\n") != std::string::npos);
}

TEST_CASE("An empty yard still makes a plan set") { CHECK(sheets_of(Site{}, {}).size() >= 2); }

TEST_CASE("The same yard gives the same PNG bytes twice") {
  const Site site = scenes::old_yard();
  const auto bytes = [&] { return png_of(sheets_of(site, {}).front(), 40).value(); };
  CHECK(bytes() == bytes());
}

TEST_CASE("A storm that was run has a plan and tables of its own, and only there its findings' places") {
  const Site site = scenes::old_yard();
  Finding flooded;
  flooded.id = "drain.storm-pit:1";
  flooded.question = Question::drain;
  flooded.rule = "drain.storm-pit";
  flooded.verdict = Verdict::fail;
  flooded.title = "The boot drowns";
  flooded.place = {{90, 70}};
  drain::storm::StormStory story;
  drain::storm::PitStory drowned{ItemId{1}, 270, 272.4};
  drowned.rim_s = 11.2 * 3600;
  drowned.overflows_s = 11.6 * 3600;
  story.pits.push_back(drowned);
  story.deepest_m = {site.ground.levels.frame(), std::vector<float>(site.ground.levels.frame().cells(), 0.1F)};
  SheetOptions options;
  const auto without = sheets_of(site, options).size();
  options.storm = std::make_shared<const StormSheet>(StormSheet{story, {flooded}, "the power fails"});
  const auto pages = sheets_of(site, options);
  CHECK(pages.size() >= without + 2);
  int with_storm = 0;
  for (const Page& page : pages) {
    const std::string words = all_words({page});
    with_storm += page.name == "The storm";
    if (page.name != "The storm") continue;
    CHECK(words.find("the power fails") != std::string::npos);
  }
  CHECK(with_storm == 2);  // a plan and its tables
  const std::string words = all_words(pages);
  CHECK(words.find("hour 11.6") != std::string::npos);
  CHECK(words.find("The boot drowns") != std::string::npos);
}
