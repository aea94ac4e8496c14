#include "editor/session/plan_set.hpp"

#include <catch2/catch.hpp>
#include <fstream>

#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "tests/geom/io/picture_files.hpp"

using namespace yardwright;
using namespace yardwright::session;
using tests::PictureFolder;

TEST_CASE("The plan set of the window is written beside the yard, and the notice says where") {
  const PictureFolder folder;
  Site site;
  site.lot = rectangular_lot(100, 80);
  REQUIRE(save_site(site, folder.path / "home.yard"));
  Session session = session_of(site, folder.path / "home.yard");
  REQUIRE(write_plan_set(session, shipped_catalogs()));
  std::ifstream file{folder.path / "home-plan.pdf", std::ios::binary};
  std::string head(5, ' ');
  file.read(head.data(), 5);
  CHECK(head == "%PDF-");
  CHECK(session.notice.find("home-plan.pdf") != std::string::npos);
}

TEST_CASE("A yard without a file asks to be saved before its plan set is written") {
  Session session = session_of(Site{});
  const auto done = write_plan_set(session, shipped_catalogs());
  REQUIRE_FALSE(done);
  CHECK(done.error().front().mend.find("save it first") != std::string::npos);
}
