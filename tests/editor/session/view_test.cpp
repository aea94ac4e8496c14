#include "editor/session/view.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;
using namespace yardwright::session;

namespace {
const View view{{30, 20}, 5, {116, 52}, 900, 600};
}

TEST_CASE("North is up on the screen") {
  CHECK(to_screen(view, {30, 20}) == view.middle());
  CHECK(to_screen(view, {30, 21}).y == Approx(view.middle().y - 5));
  CHECK(to_screen(view, {31, 20}).x == Approx(view.middle().x + 5));
}

TEST_CASE("A point on the screen and back is the same point") {
  const unsigned seed = 7;
  CAPTURE(seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> anywhere{-500, 500};
  for (int i = 0; i < 100; ++i) {
    const SitePoint point{anywhere(random), anywhere(random)};
    const SitePoint back = to_site(view, to_screen(view, point));
    CHECK(distance(point, back) < 1e-9);
  }
}

TEST_CASE("Zooming keeps the place under the pointer") {
  const ScreenPoint pointer{700, 300};
  const SitePoint before = to_site(view, pointer);
  for (const double factor : {1.2, 0.3, 1e9, 1e-9})
    CHECK(distance(to_site(zoomed(view, pointer, factor), pointer), before) < 1e-6);
}

TEST_CASE("Panning drags the plan along with the pointer") {
  const SitePoint before = to_site(view, {400, 300});
  CHECK(distance(to_site(panned(view, {25, -10}), {425, 290}), before) < 1e-9);
}

TEST_CASE("A fitted box lies wholly on the canvas") {
  const Box box{{-10, 5}, {400, 50}};
  const View fit = fitted(view, box);
  for (const SitePoint corner : {box.low, box.high}) {
    const ScreenPoint at = to_screen(fit, corner);
    CHECK((at.x > view.top_left.x && at.x < view.top_left.x + view.width_px));
    CHECK((at.y > view.top_left.y && at.y < view.top_left.y + view.height_px));
  }
}

TEST_CASE("An empty yard shows a hundred metres, a lone bin what is around it") {
  CHECK(bounds_of(Site{}) == Box{{-50, -50}, {50, 50}});
  Site site;
  Bin bin;
  bin.at = {200, 100};
  site.items.push_back({{1}, "", 0, {}, bin});
  const Box around = bounds_of(site, {{1}});
  CHECK(around.low.x < 200 - bin.diameter_m / 2 - 4);
  CHECK(around.high.y > 100 + bin.diameter_m / 2 + 4);
}
