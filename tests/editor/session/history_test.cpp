#include "editor/session/history.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "geom/site/edit.hpp"

using namespace yardwright;
using session::History;

namespace {

Site named(std::string name) {
  Site site;
  site.name = std::move(name);
  return site;
}

}  // namespace

TEST_CASE("Undo gives back exactly what was there, and redo what came after") {
  History history{named("a")};
  history.add_step(named("b"));
  history.add_step(named("c"));
  history.undo();
  CHECK(history.shown() == named("b"));
  history.undo();
  CHECK(history.shown() == named("a"));
  CHECK_FALSE(history.can_undo());
  history.redo();
  history.redo();
  CHECK(history.shown() == named("c"));
  CHECK_FALSE(history.can_redo());
}

TEST_CASE("A drag is one step however many sites it proposed") {
  History history{named("a")};
  for (const char* name : {"b", "c", "d"}) history.propose(named(name));
  CHECK(history.shown() == named("d"));
  CHECK(history.settled() == named("a"));
  history.keep_proposal();
  CHECK(history.settled() == named("d"));
  history.undo();
  CHECK(history.shown() == named("a"));
}

TEST_CASE("A dropped drag leaves no trace but a new revision") {
  History history{named("a")};
  const auto before = history.revision();
  history.propose(named("b"));
  history.drop_proposal();
  CHECK(history.shown() == named("a"));
  CHECK_FALSE(history.can_undo());
  CHECK(history.revision() > before);
}

TEST_CASE("A step that changes nothing is no step") {
  History history{named("a")};
  history.add_step(named("a"));
  history.propose(named("b"));
  history.propose(named("a"));
  history.keep_proposal();
  CHECK_FALSE(history.can_undo());
}

TEST_CASE("After any run of steps, undoing all of them returns the first site") {
  const auto seed = GENERATE(1u, 2u, 3u);
  CAPTURE(seed);
  std::mt19937 random{seed};
  History history{named("first")};
  for (int i = 0; i < 60; ++i) {
    const auto choice = random() % 4;
    if (choice == 0)
      history.undo();
    else if (choice == 1)
      history.redo();
    else
      history.add_step(named(std::to_string(i)));
  }
  while (history.can_undo()) history.undo();
  CHECK(history.shown() == named("first"));
}

TEST_CASE("A history that takes another's place shares no revision with it") {
  session::History first, second;
  first.add_step(Site{.name = "a"});
  const auto last = first.revision();
  second.follow(first);
  CHECK(second.revision() > last);
}
