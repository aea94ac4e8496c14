#include "geom/sheet/cairo_device.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

TEST_CASE("Wrapped lines fit their width and keep every word") {
  const TextMeasure measure;
  const std::string text = "raise Leg 1 by 17.4 ft to 100 ft; or move North 2 toward Leg 1 by 31 ft";
  const auto lines = measure.wrapped(text, 2.2, 25);
  REQUIRE(lines.size() > 2);
  std::string joined;
  for (const std::string& row : lines) {
    CHECK(measure.width_mm(row, 2.2) <= 25);
    joined += (joined.empty() ? "" : " ") + row;
  }
  CHECK(joined == text);
}

TEST_CASE("A word wider than its column is cut, at whole letters, and none is lost") {
  const TextMeasure measure;
  const std::string word = "Überlandstraßenbrückenwaageüüüüüüüüüüüü";
  std::string joined;
  for (const std::string& row : measure.wrapped(word, 2.2, 10)) {
    CHECK(measure.width_mm(row, 2.2) <= 10);
    joined += row;
  }
  CHECK(joined == word);
}

TEST_CASE("Words grow with the height of their letters") {
  const TextMeasure measure;
  CHECK(measure.width_mm("North 1", 4) == Approx(2 * measure.width_mm("North 1", 2)));
  CHECK(measure.width_mm("North 1", 4, true) > measure.width_mm("North 1", 4));
  CHECK(measure.width_mm("", 4) == 0);
}

TEST_CASE("Broken UTF-8 and control characters are drawn without fault") {
  Drawing drawing;
  TextMark text;
  text.text = "a\xff\xfe\x01 b\xc3";
  drawing.marks.push_back(text);
  const Page page{"Plan", 50, 50, palette::white, {{drawing, in_millimetres(), {}}}};
  CHECK(pdf_of({page}, "\xff").has_value());
  CHECK(svg_of(page).has_value());
  CHECK(png_of(page, 72).has_value());
}

TEST_CASE("A picture too large to be made is refused") {
  CHECK_FALSE(png_of({"Plan", 1e6, 1e6, palette::white, {}}, 300).has_value());
  CHECK_FALSE(png_of({"Plan", 0, 0, palette::white, {}}, 300).has_value());
}
