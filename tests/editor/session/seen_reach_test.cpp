#include "editor/session/seen_reach.hpp"

#include <catch2/catch.hpp>

#include <set>

#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

struct Asked {
  Session session = session_of(scenes::old_yard());
  Answers answers = check(session.site(), shipped_catalogs());

  ItemId first(auto is_wanted) const {
    for (const Item& item : session.site().items) {
      if (is_wanted(item)) return item.id;
    }
    FAIL("the yard has no such item");
    return {};
  }
};

bool is_bin(const Item& item) { return as<Bin>(item) != nullptr; }
bool is_leg(const Item& item) { return as<Leg>(item) != nullptr; }

}  // namespace

TEST_CASE("With nothing selected one ring is shown: of the bin that the worst spout fills") {
  const Asked asked;
  REQUIRE(asked.answers.reach->rings.size() > 2);
  const reach::CheckedSpout* spout = seen_spout(asked.session, asked.answers);
  REQUIRE(spout != nullptr);
  const auto rings = seen_rings(asked.session, asked.answers);
  REQUIRE(rings.size() == 1);
  const Item* receiver = find(asked.session.site(), spout->receiver);
  REQUIRE(as<Bin>(*receiver) != nullptr);
  CHECK(rings.front()->diameter_m == as<Bin>(*receiver)->diameter_m);
  CHECK(rings.front()->leg == spout->leg);
}

TEST_CASE("A selected bin shows its own spout and the ring of its size") {
  Asked asked;
  const ItemId bin = asked.first(is_bin);
  select(asked.session, bin);
  REQUIRE(seen_spout(asked.session, asked.answers) != nullptr);
  CHECK(seen_spout(asked.session, asked.answers)->receiver == bin);
  for (const reach::ReachRing* ring : seen_rings(asked.session, asked.answers)) {
    CHECK(ring->diameter_m == as<Bin>(*find(asked.session.site(), bin))->diameter_m);
  }
}

TEST_CASE("A selected leg shows a ring of every size, each once") {
  Asked asked;
  select(asked.session, asked.first(is_leg));
  const auto rings = seen_rings(asked.session, asked.answers);
  std::set<std::pair<double, double>> sizes, all;
  for (const auto* ring : rings) sizes.insert({ring->diameter_m, ring->eave_height_m});
  for (const auto& ring : asked.answers.reach->rings) all.insert({ring.diameter_m, ring.eave_height_m});
  CHECK(sizes == all);
  CHECK(sizes.size() == rings.size());
}

TEST_CASE("A pointed finding brings its spout into the side view") {
  Asked asked;
  for (const Finding& finding : asked.answers.reach->findings) {
    if (finding.items.size() < 2 || finding.rule.find("slope") == std::string::npos) continue;
    asked.session.pointed_finding = finding.id;
    const auto* spout = seen_spout(asked.session, asked.answers);
    REQUIRE(spout != nullptr);
    const auto names = [&](ItemId id) { return std::ranges::find(finding.items, id) != finding.items.end(); };
    CHECK((names(spout->spout) || names(spout->receiver)));
  }
}

TEST_CASE("A yard without spouts shows none") {
  const Session session = session_of(Site{});
  const Answers answers;
  CHECK(seen_spout(session, answers) == nullptr);
  CHECK(seen_rings(session, answers).empty());
  CHECK(verdict_on({}, ItemId{1}) == Verdict::pass);
}
