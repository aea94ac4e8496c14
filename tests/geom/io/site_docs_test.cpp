// docs/format.md and docs/yard.schema.json say what the program does. To write them anew after a change of fields:
// build/tests/yardwright_tests "[refresh]"
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "geom/io/site_file.hpp"
#include "geom/io/site_format_page.hpp"
#include "geom/io/site_schema.hpp"

using namespace yardwright;

namespace {

const std::filesystem::path docs = std::filesystem::path{YARDWRIGHT_SOURCE_DIR} / "docs";
constexpr std::string_view tables_mark = "<!-- tables -->\n";

std::string content(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream{path}.rdbuf();
  return text.str();
}

/// The hand-written part of the page, up to the mark.
std::string frame_of(const std::string& page) { return page.substr(0, page.find(tables_mark) + tables_mark.size()); }

}  // namespace

TEST_CASE("The committed schema is the one that the fields give", "[io]") {
  CHECK(content(docs / "yard.schema.json") == site_schema());
}

TEST_CASE("The committed format page has the tables that the fields give", "[io]") {
  const std::string page = content(docs / "format.md");
  CHECK(page == frame_of(page) + "\n" + site_format_tables());
}

TEST_CASE("The example of the format page can be read", "[io]") {
  const std::string page = content(docs / "format.md");
  const std::size_t first = page.find("```json\n") + 8;
  const auto site = read_site(page.substr(first, page.find("```", first) - first), "format.md");
  if (!site) FAIL(sentence(site.error().front()));
  CHECK(site->items.size() == 2);
}

TEST_CASE("The example with every kind can be read, and has every kind", "[io]") {
  const auto site = load_site(std::filesystem::path{YARDWRIGHT_SOURCE_DIR} / "tests/geom/io/every_kind.yard");
  if (!site) FAIL(sentence(site.error().front()));
  for (const Thing& thing : every_kind()) {
    INFO(kind_key(thing));
    CHECK(std::ranges::any_of(site->items, [&](const Item& item) { return kind_key(item.thing) == kind_key(thing); }));
  }
}

TEST_CASE("Write the schema and the format page anew", "[.][refresh]") {
  std::ofstream{docs / "yard.schema.json"} << site_schema();
  const std::string frame = frame_of(content(docs / "format.md"));
  std::ofstream{docs / "format.md"} << frame << "\n" << site_format_tables();
  CHECK(content(docs / "yard.schema.json") == site_schema());
}
