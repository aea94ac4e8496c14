#include "editor/session/pictures.hpp"

#include <catch2/catch.hpp>
#include <thread>

#include "editor/session/files.hpp"
#include "editor/session/imports.hpp"
#include "geom/io/site_file.hpp"
#include "tests/geom/io/picture_files.hpp"

using namespace yardwright;
using namespace yardwright::session;
using namespace yardwright::tests;

namespace {

struct Yard {
  PictureFolder folder;
  std::filesystem::path file = folder.path / "farm" / "home.yard";
  std::filesystem::path state = folder.path / "state";

  Yard() {
    std::filesystem::create_directories(folder.path / "farm");
    std::filesystem::create_directories(folder.path / "camera");
    write(plain_picture(40, 30, 200, 10, 10), "PNG", folder.path / "camera" / "sky.png");
    Site site;
    site.lot = rectangular_lot(100, 80);
    REQUIRE(save_site(site, file));
  }
  std::filesystem::path camera() const { return folder.path / "camera" / "sky.png"; }
};

/// As frames would: until nothing is being read.
std::string read_all(HeldPictures& held, const Site& site, const std::optional<std::filesystem::path>& file) {
  std::string told = held.read(site, file);
  while (!held.being_read().empty()) {
    std::this_thread::sleep_for(std::chrono::milliseconds{1});
    told += held.read(site, file);
  }
  return told;
}

}  // namespace

TEST_CASE("A picture laid under the plan is one step, to be fitted, and is there again after save and open") {
  const Yard yard;
  Session session = *open_yard(yard.file, yard.state);
  REQUIRE(read_now(session, picture_reading(session, yard.camera())));
  CHECK(session.tool.doing == Doing::fit);
  CHECK(std::filesystem::exists(yard.folder.path / "farm" / "sky.png"));
  REQUIRE(save_yard(session, yard.file, yard.state));
  Session again = *open_yard(yard.file, yard.state);
  CHECK(again.site() == session.site());
  HeldPictures held;
  CHECK(read_all(held, again.site(), again.file).empty());
  REQUIRE(held.of(again.site()).size() == 1);
  CHECK(held.of(again.site()).front().pixels.at(5, 5) == 0xFF0A0AC8U);
  undo(session);
  CHECK(session.site().items.empty());
}

TEST_CASE("Saved in another folder the yard takes its pictures along") {
  const Yard yard;
  Session session = *open_yard(yard.file, yard.state);
  REQUIRE(read_now(session, picture_reading(session, yard.camera())));
  const auto other = yard.folder.path / "copy" / "home.yard";
  std::filesystem::create_directories(other.parent_path());
  REQUIRE(save_yard(session, other, yard.state));
  CHECK(std::filesystem::exists(yard.folder.path / "copy" / "sky.png"));
  HeldPictures held;
  CHECK(read_all(held, *load_site(other), other).empty());
}

TEST_CASE("A picture needs a yard that has a file, and says so") {
  const Yard yard;
  Session session = session_of(Site{});
  const auto done = read_now(session, picture_reading(session, yard.camera()));
  REQUIRE_FALSE(done);
  CHECK(sentence(done.error().front()).find("save the yard first") != std::string::npos);
  CHECK(session.site() == Site{});
}

TEST_CASE("A picture that cannot be read is told once and then left as a frame") {
  const Yard yard;
  Session session = *open_yard(yard.file, yard.state);
  REQUIRE(read_now(session, picture_reading(session, yard.camera())));
  std::filesystem::remove(yard.folder.path / "farm" / "sky.png");
  HeldPictures held;
  CHECK(read_all(held, session.site(), session.file).find("sky.png") != std::string::npos);
  CHECK(read_all(held, session.site(), session.file).empty());
  CHECK(held.of(session.site()).empty());
}

TEST_CASE("A picture that was laid and never saved leaves nothing in the yard's folder") {
  const Yard yard;
  const auto copy = yard.folder.path / "farm" / "sky.png";
  {
    Session session = *open_yard(yard.file, yard.state);
    REQUIRE(read_now(session, picture_reading(session, yard.camera())));
    CHECK(std::filesystem::exists(copy));
  }
  CHECK_FALSE(std::filesystem::exists(copy));
}

TEST_CASE("A picture that is undone before the save goes, one that is saved stays") {
  const Yard yard;
  const auto copy = yard.folder.path / "farm" / "sky.png";
  {
    Session session = *open_yard(yard.file, yard.state);
    REQUIRE(read_now(session, picture_reading(session, yard.camera())));
    undo(session);
    REQUIRE(save_yard(session, yard.file, yard.state));
    CHECK(std::filesystem::exists(copy));  // it can be done again
  }
  CHECK_FALSE(std::filesystem::exists(copy));
  {
    Session session = *open_yard(yard.file, yard.state);
    REQUIRE(read_now(session, picture_reading(session, yard.camera())));
    REQUIRE(save_yard(session, yard.file, yard.state));
  }
  CHECK(std::filesystem::exists(copy));
}

TEST_CASE("A picture that lay beside the yard before is not taken away") {
  const Yard yard;
  const auto own = yard.folder.path / "farm" / "own.png";
  write(plain_picture(40, 30, 10, 10, 200), "PNG", own);
  {
    Session session = *open_yard(yard.file, yard.state);
    REQUIRE(read_now(session, picture_reading(session, own)));
  }
  CHECK(std::filesystem::exists(own));
}
