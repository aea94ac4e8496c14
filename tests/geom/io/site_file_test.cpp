#include "geom/io/site_file.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <random>

#include "tests/geom/io/random_site.hpp"

using namespace yardwright;

namespace {

/// A folder of its own for one test, gone afterwards.
struct Folder {
  std::filesystem::path path;
  Folder() {
    static int count = 0;
    path = std::filesystem::temp_directory_path() /
           ("yardwright-io-" + std::to_string(std::random_device{}()) + std::to_string(++count));
    std::filesystem::create_directories(path);
  }
  ~Folder() { std::filesystem::remove_all(path); }
};

std::vector<std::string> names_in(const Folder& folder) {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(folder.path))
    names.push_back(entry.path().filename().string());
  std::ranges::sort(names);
  return names;
}

Site read(const std::string& text) {
  const auto site = read_site(text, "a.yard");
  if (!site) INFO(sentence(site.error().front()));
  REQUIRE(site.has_value());
  return *site;
}

}  // namespace

TEST_CASE("A site of any content comes back from its file exactly as it was", "[io]") {
  constexpr unsigned seed = 20261125;
  CAPTURE(seed);
  std::mt19937 random{seed};
  for (int i = 0; i < 200; ++i) {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      const Site site = tests::random_site(random, units);
      const std::string text = write_site(site);
      const auto again = read_site(text, "a.yard");
      if (!again) FAIL(sentence(again.error().front()));
      REQUIRE(*again == site);
      REQUIRE(write_site(*again) == text);
    }
  }
}

TEST_CASE("An empty site comes back as it was", "[io]") { CHECK(read(write_site(Site{})) == Site{}); }

TEST_CASE("Numbers stand in the file as they were typed, in the file's units", "[io]") {
  Site site;
  Bin bin;
  bin.at = {100 * 0.3048, 50.5 * 0.3048};
  bin.diameter_m = 36 * 0.3048;
  bin.eave_height_m = 8.53;
  site.items.push_back({{4}, "North 1", 0, std::nullopt, bin});
  const std::string text = write_site(site);
  CHECK(
      text.find(
          R"({"id": 4, "kind": "bin", "name": "North 1", "phase": 0, "at": [100, 50.5], "diameter": 36, "eave": "8.53 m", "roof": 30,)") !=
      std::string::npos);
  site.units = UnitSystem::metric;
  CHECK(write_site(site).find(R"("eave": 8.53,)") != std::string::npos);
}

TEST_CASE("Each item has a line of its own", "[io]") {
  std::mt19937 random{7};
  const Site site = tests::random_site(random, UnitSystem::us);
  const std::string text = write_site(site);
  std::size_t lines = 0;
  for (std::size_t at = text.find("\n  {\"id\": "); at != std::string::npos; at = text.find("\n  {\"id\": ", at + 1))
    ++lines;
  CHECK(lines == site.items.size());
}

TEST_CASE("A value may be given as text with any unit, and a field left out has its default", "[io]") {
  const Site site = read(R"({"yardwright": 1, "units": "us", "items": [
    {"id": 1, "kind": "bin", "at": ["10 m", 20], "diameter": "36' 6\"", "roof": "7:12"}]})");
  const Bin& bin = *as<Bin>(site.items.at(0));
  CHECK(bin.at == SitePoint{10, 20 * 0.3048});
  CHECK(bin.diameter_m == 36.5 * 0.3048);
  CHECK(bin.roof_slope.as_degrees() == Approx(30.2564));  // atan(7 / 12): arithmetic
  CHECK(bin.eave_height_m == Bin{}.eave_height_m);
}

TEST_CASE("A saved site is loaded with its ground, and nothing else is left in the folder", "[io]") {
  const Folder folder;
  std::mt19937 random{20261126};
  for (const char* ground_file : {"", "levels.tif"}) {
    Site site = tests::random_site(random, UnitSystem::us);
    site.ground.levels = tests::random_levels(random);
    site.ground.file = ground_file;
    const auto path = folder.path / "north.yard";
    REQUIRE(save_site(site, path).has_value());
    const auto again = load_site(path);
    if (!again) FAIL(sentence(again.error().front()));
    if (site.ground.file.empty()) site.ground.file = "north.ground.tif";
    CHECK(*again == site);
  }
  CHECK(names_in(folder) == std::vector<std::string>{"levels.tif", "north.ground.tif", "north.yard"});
}

TEST_CASE("The ground is written again only where it has changed, and never over another site's", "[io]") {
  const Folder folder;
  std::mt19937 random{1};
  Site site = tests::random_site(random, UnitSystem::us);
  site.ground.levels = tests::random_levels(random);
  site.ground.file = "shared.tif";
  REQUIRE(save_site(site, folder.path / "a.yard").has_value());
  const auto written = std::filesystem::last_write_time(folder.path / "shared.tif");
  site.name = "another name";
  REQUIRE(save_site(site, folder.path / "a.yard").has_value());
  CHECK(std::filesystem::last_write_time(folder.path / "shared.tif") == written);

  Site changed = site;
  changed.ground.levels = tests::random_levels(random);
  REQUIRE(save_site(changed, folder.path / "b.yard").has_value());
  CHECK(load_site(folder.path / "a.yard")->ground.levels == site.ground.levels);
  CHECK(load_site(folder.path / "b.yard")->ground.levels == changed.ground.levels);
}

TEST_CASE("A site that could not be read again does not replace the file", "[io]") {
  const Folder folder;
  const auto path = folder.path / "a.yard";
  REQUIRE(save_site(Site{}, path).has_value());
  Site bad;
  bad.lot.corners = {{0, 0}};
  CHECK_FALSE(save_site(bad, path).has_value());
  bad = {};
  bad.name = "not \xff UTF-8";
  CHECK_FALSE(save_site(bad, path).has_value());
  CHECK(*load_site(path) == Site{});
  CHECK(names_in(folder) == std::vector<std::string>{"a.yard"});
}

TEST_CASE("Saving where nothing can be written says so and what to do", "[io]") {
  const auto saved = save_site(Site{}, "/nowhere/at/all/a.yard");
  REQUIRE_FALSE(saved.has_value());
  CHECK(sentence(saved.error().front()).find("check that the folder exists") != std::string::npos);
}

TEST_CASE("A missing site file, a missing ground file and a linked one are refused with a sentence", "[io]") {
  const Folder folder;
  CHECK_FALSE(load_site(folder.path / "none.yard").has_value());
  std::ofstream{folder.path / "a.yard"} << R"({"yardwright": 1, "ground": {"file": "gone.tif"}})";
  const auto site = load_site(folder.path / "a.yard");
  REQUIRE_FALSE(site.has_value());
  CHECK(sentence(site.error().front()).starts_with("gone.tif"));
  std::filesystem::create_symlink("/etc/hostname", folder.path / "gone.tif");
  const auto linked = load_site(folder.path / "a.yard");
  REQUIRE_FALSE(linked.has_value());
  CHECK(linked.error().front().what.find("out of the folder") != std::string::npos);
}
