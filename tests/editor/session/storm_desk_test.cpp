#include "editor/session/storm_desk.hpp"

#include <catch2/catch.hpp>
#include <chrono>

#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

Site sloping_yard() {
  Site site;
  site.ground.levels = drain::ground_of(40, 40, 1, [](SitePoint at) { return 100 + 0.02 * at.y; });
  site.items.push_back({next_id(site), "Sump", 0, {}, Pit{.at = {20, 20}}});
  return site;
}

drain::storm::StormOptions quarter_hour() {
  drain::storm::StormOptions options;
  options.length_s = 900;
  return options;
}

void wait_for(const StormDesk& desk) {
  const auto begun = std::chrono::steady_clock::now();
  while (desk.is_running() && std::chrono::steady_clock::now() - begun < std::chrono::minutes{2})
    std::this_thread::sleep_for(std::chrono::milliseconds{2});
  REQUIRE_FALSE(desk.is_running());
}

}  // namespace

TEST_CASE("A storm run beside the window gives its story and its findings", "[session]") {
  StormDesk desk{shipped_catalogs()};
  CHECK(desk.record() == nullptr);
  const Site site = sloping_yard();
  desk.run(site, quarter_hour());
  wait_for(desk);
  REQUIRE(desk.record() != nullptr);
  CHECK_FALSE(desk.record()->story.stopped);
  CHECK_FALSE(desk.record()->findings.empty());
  CHECK(desk.refusal().empty());
  CHECK(is_of(*desk.record(), site));
  Site moved = site;
  std::get<Pit>(moved.items[0].thing).at.x += 1;
  CHECK_FALSE(is_of(*desk.record(), moved));
  Site renamed = site;
  renamed.title.owner = "someone else";
  CHECK(is_of(*desk.record(), renamed));
}

TEST_CASE("A storm is ended by a new one and by a stop", "[session]") {
  StormDesk desk{shipped_catalogs()};
  drain::storm::StormOptions day;
  day.start_s = 0;
  day.length_s = 24 * 3600;
  desk.run(sloping_yard(), day);
  desk.run(sloping_yard(), quarter_hour());
  wait_for(desk);
  CHECK_FALSE(desk.record()->story.stopped);
  CHECK(desk.record()->options.length_s == 900);
  desk.run(sloping_yard(), day);
  desk.stop();
  wait_for(desk);
  CHECK(desk.record()->story.stopped);
}

TEST_CASE("A storm that is refused keeps the story before it", "[session]") {
  StormDesk desk{shipped_catalogs()};
  desk.run(sloping_yard(), quarter_hour());
  wait_for(desk);
  desk.run(Site{}, quarter_hour());
  wait_for(desk);
  CHECK_FALSE(desk.refusal().empty());
  CHECK(desk.record() != nullptr);
}
