// What read_site says of files that are not as they should be.
#include <catch2/catch.hpp>
#include <random>

#include "geom/io/site_file.hpp"
#include "tests/geom/io/random_site.hpp"

using namespace yardwright;

namespace {

std::vector<std::string> sentences(const std::string& text) {
  const auto site = read_site(text, "a.yard");
  std::vector<std::string> said;
  if (site) return said;
  for (const Problem& problem : site.error()) said.push_back(sentence(problem));
  return said;
}

/// The one sentence about a file of these members.
std::string said_of(const std::string& members) {
  const auto said = sentences("{\"yardwright\": 1, " + members + "}");
  INFO(members);
  for (const std::string& each : said) UNSCOPED_INFO(each);
  REQUIRE(said.size() == 1);
  return said.front();
}

std::string said_of_item(const std::string& item) { return said_of("\"items\": [\n" + item + "]"); }

using Catch::Matchers::Contains;

}  // namespace

TEST_CASE("Text that is no JSON is refused with line and column", "[io]") {
  CHECK_THAT(sentences("{\"yardwright\": 1,\n \"name\": oops}").at(0), Contains("a.yard, line 2, column 10"));
  CHECK_THAT(sentences("").at(0), Contains("line 1, column 1"));
  CHECK_THAT(sentences("{\"yardwright\": 1, \"name\": \"a").at(0), Contains("line 1"));
  CHECK_THAT(sentences("{\"yardwright\": 1, \"lot\": NaN}").at(0), Contains("no JSON"));
  CHECK_THAT(sentences("{\"yardwright\": 1, \"lot\": 1e999}").at(0), Contains("a number that is none"));
}

TEST_CASE("A file of another program or a newer version is refused politely", "[io]") {
  CHECK_THAT(sentences("{\"features\": []}").at(0), Contains("is no yard file"));
  CHECK_THAT(sentences("[1, 2]").at(0), Contains("is no yard file"));
  CHECK_THAT(sentences("{\"yardwright\": 2, \"anything\": 3}").at(0), Contains("newer yardwright, as version 2"));
}

TEST_CASE("Text made to exhaust the reader is refused", "[io]") {
  CHECK_THAT(sentences(std::string(1'000'000, '[')).at(0), Contains("nested more than"));
  std::string many = "[0";
  for (int i = 0; i < 2'100'000; ++i) many += ",0";
  CHECK_THAT(sentences(many).at(0), Contains("holds more than 2000000 values"));
  CHECK_THAT(sentences(std::string(most_site_file_bytes + 1, ' ')).at(0), Contains("larger than 64 MB"));
}

TEST_CASE("What is unknown is named, with the nearest that is known", "[io]") {
  CHECK(said_of_item(R"({"id": 4, "kind": "bin", "name": "North 1", "at": [0, 0], "diametre": 36})") ==
        "a.yard, line 2, item 4 (North 1), diametre: is no field that is known here; did you mean \"diameter\"?");
  CHECK_THAT(said_of_item(R"({"id": 4, "kind": "bim", "at": [0, 0]})"),
             Contains("\"bim\" is no kind; did you mean \"bin\"?"));
  CHECK_THAT(said_of(R"("strom": {})"), Contains("did you mean \"storm\"?"));
  CHECK_THAT(said_of(R"("storm": {"type": "IV"})"), Contains("\"IV\" is no choice"));
  CHECK_THAT(said_of(R"("rules": [{"rule": "reach.slope-dri", "value": 3}])"),
             Contains("did you mean \"reach.slope-dry\"?"));
  CHECK_THAT(said_of_item(R"({"id": 4, "kind": "pit", "at": [0, 0], "body": {"dept": 1}})"),
             Contains("item 4, body, dept: is no field that is known here; did you mean \"depth\"?"));
}

TEST_CASE("A value of the wrong sort or size is refused with what would do", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0, 0], "diameter": true})"),
             Contains("write a number in ft"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0, 0], "diameter": -3})"),
             Contains("-3.0 ft is too small; give 3.3 ft to 196.9 ft"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0, 0], "diameter": 1e300})"),
             Contains("1e+300 ft is too large"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0, 0], "diameter": "nan"})"), Contains("not understood"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0, 0], "diameter": "36 bananas"})"), Contains("ft"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [0]})"), Contains("write a point as [east, north]"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin"})"), Contains("at: is missing; give the place"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "bin", "at": [1e300, 0]})"), Contains("is too large"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "leg", "at": [0, 0], "outlets": 2.5})"),
             Contains("write a whole number"));
  CHECK_THAT(said_of_item("7"), Contains("is a number; write an object"));
  CHECK_THAT(said_of(R"("items": {})"), Contains("write a list"));
}

TEST_CASE("A key given twice is refused, since one of the two would be lost", "[io]") {
  CHECK_THAT(said_of(R"("name": "a", "name": "b")"), Contains("\"name\" is given twice"));
}

TEST_CASE("An id is a whole number above zero, and one item's own", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 0, "kind": "well", "at": [0, 0]})"), Contains("0 is too small; give 1 to"));
  CHECK_THAT(said_of_item(R"({"kind": "well", "at": [0, 0]})"), Contains("id: is missing"));
  CHECK_THAT(
      said_of_item("{\"id\": 3, \"kind\": \"well\", \"at\": [0, 0]},\n{\"id\": 3, \"kind\": \"well\", \"at\": [9, 0]}"),
      Contains("line 3, item 3, id: is that of an earlier item too"));
}

TEST_CASE("Naming an item that is not there is a problem of the one that names it", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "spout", "from": 7, "to": null})"),
             Contains("item 1, from: names item 7"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "conveyor", "path": [[0, 0], [9, 0]], "to": 7})"),
             Contains("item 1, to: names item 7"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "route", "path": [], "stops": [1, 8]})"),
             Contains("stops: names item 8"));
}

TEST_CASE("An item that cannot be read is not also called missing", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "spout", "from": 2, "to": 2}, {"id": 2, "kind": "leg"})"),
             Contains("item 2, at"));
}

TEST_CASE("A path has two points and an outline three", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "berm", "path": [[0, 0]]})"), Contains("has 1 of the 2 points"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "pad", "outline": [[0, 0], [9, 0]]})"),
             Contains("has 2 of the 3 points"));
}

TEST_CASE("A lot is an area with an edge for each corner", "[io]") {
  CHECK_THAT(said_of(R"("lot": {"corners": [[0, 0], [100, 0], [0, 50]], "edges": ["road"]})"),
             Contains("1 for 3 corners"));
  CHECK_THAT(
      said_of(
          R"("lot": {"corners": [[0, 0], [100, 90], [100, 0], [0, 100]], "edges": ["road", "road", "road", "road"]})"),
      Contains("the lot crosses itself"));
  CHECK_THAT(said_of(R"("lot": {"corners": [[0, 0], [100, 0], [0, 50]], "edges": ["road", "road", "lake"]})"),
             Contains("\"lake\" is no choice; use one of neighbour, road, own-field"));
}

TEST_CASE("A phase is one of those that are named, and nothing goes before it is built", "[io]") {
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "well", "at": [0, 0], "phase": 1})"),
             Contains("phase: 1 is too large; give 0 to 0"));
  CHECK_THAT(said_of_item(R"({"id": 1, "kind": "well", "at": [0, 0], "phase": -1})"), Contains("too small"));
  CHECK_THAT(said_of(R"("phases": [])"), Contains("name 1 to 100 phases"));
  CHECK_THAT(
      said_of(R"("phases": ["a", "b"], "items": [{"id": 1, "kind": "well", "at": [0, 0], "phase": 1, "gone-in": 1}])"),
      Contains("later phase"));
}

TEST_CASE("A site file names files of its own folder only", "[io]") {
  for (const char* name : {"../a.tif", "/etc/passwd", "C:\\\\a.tif", "a/b.tif", "..", "a\\u0000b"}) {
    INFO(name);
    CHECK_THAT(said_of("\"ground\": {\"file\": \"" + std::string{name} + "\"}"),
               Contains("ground, file: is no plain file name"));
    CHECK_THAT(said_of_item(R"({"id": 1, "kind": "picture", "at": [0, 0], "file": ")" + std::string{name} + "\"}"),
               Contains("is no plain file name"));
  }
}

TEST_CASE("All problems of a file are told at once, each with its line", "[io]") {
  const auto said = sentences(R"({"yardwright": 1,
 "colour": "red",
 "lot": {"corners": [[0, 0]], "edges": []},
 "items": [
  {"id": 1, "kind": "bin", "at": [0, 0], "eave": "tall", "roof": 89},
  {"id": 1, "kind": "silo", "at": [0, 0]},
  {"id": 2, "kind": "spout", "from": 9, "to": 1}]})");
  for (const std::string& each : said) UNSCOPED_INFO(each);
  REQUIRE(said.size() == 8);
  for (const char* line :
       {"line 2, colour", "line 3, lot, edges", "line 3, lot, corners", "line 5, item 1, eave", "line 5, item 1, roof",
        "line 6, item 1, id", "line 6, item 1, kind", "line 7, item 2, from"}) {
    CHECK(std::ranges::count_if(said, [&](const std::string& each) { return each.find(line) != std::string::npos; }) ==
          1);
  }
}

TEST_CASE("A file with thousands of problems tells the first ones and how many more there are", "[io]") {
  std::string items;
  for (int i = 0; i < 3000; ++i) items += (items.empty() ? "" : ",") + std::string{"{}"};
  const auto said = sentences("{\"yardwright\": 1, \"items\": [" + items + "]}");
  CHECK(said.size() == 201);
  CHECK_THAT(said.back(), Contains("5800 more problems"));
}

TEST_CASE("Any bytes are a site or are refused with sentences", "[io]") {
  constexpr unsigned seed = 20261127;
  CAPTURE(seed);
  std::mt19937 random{seed};
  const std::string whole = write_site(tests::random_site(random, UnitSystem::us));
  const std::string marks = "{}[]\",:-+.eE0123456789\\\n tfn\xff";
  int refused_count = 0;
  for (int i = 0; i < 2000; ++i) {
    std::string text = whole;
    for (int change = static_cast<int>(random() % 4); change >= 0; --change) {
      const std::size_t at = random() % text.size();
      if (random() % 3 == 0)
        text.erase(at, random() % 40);
      else
        text[at] = random() % 2 == 0 ? marks[random() % marks.size()] : static_cast<char>(random());
    }
    const auto site = read_site(text, "a.yard");
    if (site) {
      REQUIRE(read_site(write_site(*site), "a.yard") == *site);
      continue;
    }
    ++refused_count;
    REQUIRE_FALSE(site.error().empty());
    for (const Problem& problem : site.error())
      REQUIRE((!problem.what.empty() && !problem.where.empty() && !problem.mend.empty()));
  }
  CHECK(refused_count > 500);
}
