#include "geom/sheet/plan_sheet.hpp"

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

std::vector<Page> sheets_of(const Site& site, const SheetOptions& options, const Findings& findings = {}) {
  auto pages = plan_sheets(site, design_surface(site), shipped_catalogs(), findings, options);
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
  const SheetPoint at = on_paper(placed.placement, placed.drawing.y_up, text.at) + SheetVector{text.offset_mm.x + left, text.offset_mm.y};
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
  const auto pages = plan_sheets(hundred_foot_yard(), {}, shipped_catalogs(), {}, options);
  REQUIRE_FALSE(pages.has_value());
  CHECK(pages.error().front().mend.find("1 in = ") != std::string::npos);
}

TEST_CASE("A finding's words, its mend, the scale and the cautions stand on the sheets") {
  SheetOptions options;
  options.scale_ratio = 240;
  const std::string words = all_words(sheets_of(hundred_foot_yard(), options, {failing_finding()}));
  for (const char* part : {"Spout to North 2", "short by 6.6 ft", "raise Leg 1", "1 in = 20 ft", "Overhead lines", "Confined spaces", "Entrapment"}) {
    INFO(part);
    CHECK(words.find(part) != std::string::npos);
  }
}

TEST_CASE("A question that gave no finding is said to be not judged") {
  const std::string words = all_words(sheets_of(hundred_foot_yard(), {}, {failing_finding()}));
  CHECK(words.find("it was not judged") != std::string::npos);
}

TEST_CASE("An empty yard still makes a plan set") { CHECK(sheets_of(Site{}, {}).size() >= 2); }

TEST_CASE("The same yard gives the same PNG bytes twice") {
  const Site site = scenes::old_yard();
  const auto bytes = [&] { return png_of(sheets_of(site, {}).front(), 40).value(); };
  CHECK(bytes() == bytes());
}
