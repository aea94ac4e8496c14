#include "editor/session/reading_desk.hpp"

#include <catch2/catch.hpp>
#include <future>
#include <thread>

using namespace yardwright;
using namespace yardwright::session;

namespace {

/// A reading that ends when it is let go, and then names the yard.
struct SlowFile {
  std::promise<void> go;
  std::shared_future<void> gone = go.get_future().share();

  Reading naming(const std::string& name) const {
    return [name, gone = gone]() -> Expected<TakeIn> {
      gone.wait();
      return [name](Session& session) { perform(session, {SetName{name, {}}}); };
    };
  }
};

Reading quick(const std::string& name) {
  return [name]() -> Expected<TakeIn> { return [name](Session& session) { perform(session, {SetName{name, {}}}); }; };
}

std::optional<Expected<TakeIn>> wait_and_take(ReadingDesk& desk) {
  while (desk.is_reading() && !desk.is_done()) std::this_thread::sleep_for(std::chrono::milliseconds{1});
  return desk.take();
}

}  // namespace

TEST_CASE("What is read beside the frames changes nothing until it is taken") {
  ReadingDesk desk;
  SlowFile file;
  Session session = session_of(Site{});
  desk.read("levels.tif", file.naming("read"));
  CHECK(desk.is_reading());
  CHECK(desk.name() == "levels.tif");
  CHECK_FALSE(desk.take());
  file.go.set_value();
  const auto taken = wait_and_take(desk);
  REQUIRE(taken);
  REQUIRE(*taken);
  CHECK(session.site() == Site{});
  (**taken)(session);
  CHECK(session.site().name == "read");
  CHECK_FALSE(desk.is_reading());
  CHECK(desk.name().empty());
}

TEST_CASE("The newest reading wins, whichever ends first") {
  ReadingDesk desk;
  SlowFile slow;
  desk.read("slow", slow.naming("slow"));
  desk.read("new", quick("new"));
  Session session = session_of(Site{});
  const auto taken = wait_and_take(desk);
  slow.go.set_value();
  REQUIRE(taken);
  (**taken)(session);
  CHECK(session.site().name == "new");
  CHECK_FALSE(wait_and_take(desk));
}

TEST_CASE("A reading that is cancelled gives nothing and does not hold the next one up") {
  ReadingDesk desk;
  SlowFile slow;
  desk.read("slow", slow.naming("slow"));
  desk.cancel();
  CHECK_FALSE(desk.is_reading());
  desk.read("next", quick("next"));
  CHECK(wait_and_take(desk));
  slow.go.set_value();
}

TEST_CASE("A file that is refused comes back as its problem") {
  ReadingDesk desk;
  desk.read("words.tif", []() -> Expected<TakeIn> { return refused("is no ground", "words.tif", "give levels"); });
  const auto taken = wait_and_take(desk);
  REQUIRE(taken);
  REQUIRE_FALSE(*taken);
  CHECK(taken->error().front().where == "words.tif");
}
