#include "editor/session/files.hpp"

#include <catch2/catch.hpp>
#include <fstream>

using namespace yardwright;
using namespace yardwright::session;

namespace {

/// A folder of its own for each test, gone afterwards.
struct Folder {
  std::filesystem::path path = std::filesystem::temp_directory_path() / "yardwright-files-test";
  Folder() {
    std::filesystem::remove_all(path);
    std::filesystem::create_directories(path);
  }
  ~Folder() { std::filesystem::remove_all(path); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::filesystem::path state() const { return path / "state"; }
};

Session with_a_bin() {
  Session session = session_of(Site{});
  perform(session, {PutItem{{{1}, "Bin 1", 0, {}, Bin{}}}});
  return session;
}

}  // namespace

TEST_CASE("A saved yard opens again as it was and has nothing unsaved") {
  const Folder folder;
  Session session = with_a_bin();
  REQUIRE(save_yard(session, folder.path / "a.yard", folder.state()));
  CHECK_FALSE(session.is_changed());
  const auto again = open_yard(folder.path / "a.yard", folder.state());
  REQUIRE(again);
  CHECK(again->site() == session.site());
  CHECK_FALSE(again->is_changed());
}

TEST_CASE("What an autosave holds comes back as one step over the file") {
  const Folder folder;
  Session session = with_a_bin();
  REQUIRE(save_yard(session, folder.path / "a.yard", folder.state()));
  const Site in_file = session.site();
  perform(session, {RemoveItem{{1}}});
  REQUIRE(autosave(session, folder.state()));
  auto again = open_yard(folder.path / "a.yard", folder.state());
  REQUIRE(again);
  CHECK(again->site() == session.site());
  CHECK(again->is_changed());
  undo(*again);
  CHECK(again->site() == in_file);
}

TEST_CASE("Saving takes the autosave away; a yard without changes writes none") {
  const Folder folder;
  Session session = with_a_bin();
  REQUIRE(autosave(session, folder.state()));
  CHECK(new_yard(Site{}, folder.state()).site() == session.site());
  REQUIRE(save_yard(session, folder.path / "a.yard", folder.state()));
  CHECK(open_yard(folder.path / "a.yard", folder.state())->notice.empty());
  REQUIRE(autosave(session, folder.state()));
  CHECK_FALSE(open_yard(folder.path / "a.yard", folder.state())->is_changed());
}

TEST_CASE("Recent files are listed last first, once, and only while they are there") {
  const Folder folder;
  for (const char* name : {"a.yard", "b.yard", "a.yard"}) {
    std::ofstream{folder.path / name} << "{}";
    remember_recent(folder.path / name, folder.state());
  }
  CHECK(recent_files(folder.state()) == std::vector{folder.path / "a.yard", folder.path / "b.yard"});
  std::filesystem::remove(folder.path / "a.yard");
  CHECK(recent_files(folder.state()) == std::vector{folder.path / "b.yard"});
}

TEST_CASE("A file that is none is refused with its problems and changes nothing") {
  const Folder folder;
  std::ofstream{folder.path / "a.yard"} << "no yard";
  const auto opened = open_yard(folder.path / "a.yard", folder.state());
  REQUIRE_FALSE(opened);
  CHECK_FALSE(opened.error().empty());
  CHECK(recent_files(folder.state()).empty());
}

TEST_CASE("A name without an ending becomes a yard file") {
  CHECK(as_yard_file("north").string() == "north.yard");
  CHECK(as_yard_file("north.yard").string() == "north.yard");
}
