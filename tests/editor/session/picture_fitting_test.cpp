#include "editor/session/picture_fitting.hpp"

#include <catch2/catch.hpp>

#include "geom/site/picture_fit.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

constexpr double ft = 0.3048;

/// A picture 100 m wide about (50, 50), with the fit tool in hand and two points clicked in it.
Session with_two_points(SitePoint a, SitePoint b) {
  Site site;
  site.units = UnitSystem::metric;
  Picture picture;
  picture.at = {50, 50};
  site.items.push_back({{1}, "sky", 0, {}, picture});
  Session session = session_of(site);
  take_tool(session, fit_tool({1}));
  for (const SitePoint at : {a, b}) click_tool(session, at, {});
  return session;
}

const Picture& picture_of(const Session& session) { return std::get<Picture>(session.site().items.front().thing); }
bool near(SitePoint a, SitePoint b) { return distance(a, b) < 1e-9; }

}  // namespace

TEST_CASE("Until both points are clicked there is nothing to type") {
  Session session = with_two_points({10, 10}, {40, 50});
  CHECK(fit_rows(session).size() == 4);
  session.tool.points.pop_back();
  CHECK(fit_rows(session).empty());
  CHECK_FALSE(fit_by(session, "distance", "25 m"));
}

TEST_CASE("A typed distance scales the picture, and the points stay on their spots") {
  Session session = with_two_points({10, 10}, {40, 50});
  REQUIRE(fit_by(session, "distance", "25"));
  CHECK(picture_of(session).width_m == Approx(50));
  CHECK(near(session.tool.points[0], {10, 10}));
  CHECK(near(session.tool.points[1], {25, 30}));
  REQUIRE(fit_by(session, "distance", "100ft"));
  CHECK(distance(session.tool.points[0], session.tool.points[1]) == Approx(100 * ft));
}

TEST_CASE("Both places typed one after the other put both points where they belong") {
  Session session = with_two_points({10, 10}, {40, 50});
  REQUIRE(fit_by(session, "a", "100m, 20m"));
  CHECK(near(session.tool.points[0], {100, 20}));
  REQUIRE(fit_by(session, "b", "100, 120"));
  CHECK(near(session.tool.points[0], {100, 20}));
  CHECK(near(session.tool.points[1], {100, 120}));
  CHECK(picture_of(session).width_m == Approx(200));
}

TEST_CASE("A typed bearing turns the picture about its first point") {
  Session session = with_two_points({50, 50}, {60, 50});
  REQUIRE(fit_by(session, "bearing", "180"));
  CHECK(picture_of(session).facing.as_degrees() == Approx(90));
  CHECK(near(session.tool.points[1], {50, 40}));
}

TEST_CASE("Undo takes picture and points back together, and each step alone") {
  Session session = with_two_points({10, 10}, {40, 50});
  const Picture before = picture_of(session);
  REQUIRE(fit_by(session, "distance", "25"));
  REQUIRE(fit_by(session, "a", "0, 0"));
  undo(session);
  undo(session);
  CHECK(picture_of(session) == before);
  CHECK(distance(session.tool.points[1], {40, 50}) < 1e-9);
  redo(session);
  CHECK(distance(session.tool.points[1], {25, 30}) < 1e-9);
}

TEST_CASE("Undo of the picture itself puts the fit tool down") {
  Session session = session_of(Site{});
  perform(session, {PutItem{{{1}, "sky", 0, {}, Picture{}}}});
  take_tool(session, fit_tool({1}));
  undo(session);
  CHECK(session.tool == Tool{});
}

TEST_CASE("Text that is no place or no length changes nothing and says so") {
  Session session = with_two_points({10, 10}, {40, 50});
  const Site before = session.site();
  for (const auto& [key, text] : {std::pair{"a", "12"},
                                  {"a", "x, y"},
                                  {"b", ""},
                                  {"distance", "far"},
                                  {"distance", "0"},
                                  {"bearing", "north-ish"}}) {
    const auto done = fit_by(session, key, text);
    INFO(key << " " << text);
    CHECK_FALSE(done);
  }
  CHECK(session.site() == before);
}

TEST_CASE("A third click begins anew, and Escape drops the points before the tool") {
  Session session = with_two_points({10, 10}, {40, 50});
  click_tool(session, {70, 70}, {});
  CHECK(session.tool.points.size() == 1);
  CHECK(session.tool.from == ItemId{1});
  session.tool = cancelled(session.tool);
  CHECK(session.tool == fit_tool({1}));
  CHECK(cancelled(session.tool) == Tool{});
}
