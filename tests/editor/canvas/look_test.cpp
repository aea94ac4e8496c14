#include "editor/canvas/look.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>

using namespace yardwright;
using namespace yardwright::look;

namespace {

/// The asked scale while it lives, and none afterwards.
struct AskedScale {
  explicit AskedScale(const char* text) { setenv("YARDWRIGHT_UI_SCALE", text, 1); }
  ~AskedScale() { unsetenv("YARDWRIGHT_UI_SCALE"); }
};

}  // namespace

TEST_CASE("The window's letters grow with the screen, in quarters, and never below their size at 1366 x 768") {
  unsetenv("YARDWRIGHT_UI_SCALE");
  CHECK(scale_for(1366, 768) == 1.0F);
  CHECK(scale_for(800, 600) == 1.0F);
  CHECK(scale_for(1920, 1080) == 1.0F);
  CHECK(scale_for(2560, 1440) == 1.5F);
  CHECK(scale_for(3840, 2160) == 2.25F);
  CHECK(scale_for(2160, 3840) == 1.25F);
  CHECK(scale_for(20000, 12000) == 2.5F);
}

TEST_CASE("A scale that is asked for holds, one that makes no sense does not") {
  CHECK((AskedScale{"1.5"}, scale_for(1366, 768)) == 1.5F);
  CHECK((AskedScale{"90"}, scale_for(1366, 768)) == 1.0F);
  CHECK((AskedScale{"large"}, scale_for(1366, 768)) == 1.0F);
}

TEST_CASE("Colours keep their parts on the way to the window") {
  const Colour colour{10, 20, 30, 40};
  CHECK(packed(colour) == IM_COL32(10, 20, 30, 40));
  CHECK(unpacked(colour).x == Approx(10 / 255.0));
  CHECK(unpacked(colour).w == Approx(40 / 255.0));
}

// Relative luminance and contrast ratio: W3C, Web Content Accessibility Guidelines 2.1, "contrast ratio" (from memory);
// 4.5 for words of ordinary size, 3 for signs.
TEST_CASE("Words and verdict signs stand out from the paper they are drawn on") {
  const auto part = [](double value) {
    return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
  };
  const auto luminance = [&](Colour c) {
    return 0.2126 * part(c.red / 255.0) + 0.7152 * part(c.green / 255.0) + 0.0722 * part(c.blue / 255.0);
  };
  const auto contrast = [&](Colour a, Colour b) {
    const double high = std::max(luminance(a), luminance(b)), low = std::min(luminance(a), luminance(b));
    return (high + 0.05) / (low + 0.05);
  };
  for (const Colour ground : {palette::paper, palette::card, palette::white}) {
    CHECK(contrast(palette::ink, ground) >= 4.5);
    CHECK(contrast(palette::quiet_ink, ground) >= 4.5);
    for (const Verdict verdict : {Verdict::fail, Verdict::pass}) CHECK(contrast(palette::of(verdict), ground) >= 3);
  }
}
