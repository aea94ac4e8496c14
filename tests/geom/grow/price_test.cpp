// Price books and what quantities cost by them.
#include <catch2/catch.hpp>

#include "geom/grow/cost.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::scenes;

namespace {

constexpr double ft = 0.3048;

PriceBook book_of(const std::string& list) {
  const auto book =
      price_book_in(R"({"prices": 1, "date": "2026-03-01", "currency": "EUR", "list": [)" + list + "]}", "own.json");
  REQUIRE(book);
  return *book;
}

Problems refused_of(const std::string& text) {
  const auto book = price_book_in(text, "own.json");
  REQUIRE_FALSE(book);
  return book.error();
}

Problem refused_price(const std::string& price) {
  return refused_of("{\"prices\": 1, \"date\": \"d\", \"currency\": \"EUR\", \"list\": [\n" + price + "]}").front();
}

grow::Quantities quantities_of(std::vector<Thing> things) {
  SceneBuilder yard{Site{}};
  for (Thing& thing : things) yard.add("", std::move(thing));
  return grow::quantities(yard.site(), design_surface(yard.site()), shipped_catalogs());
}

}  // namespace

TEST_CASE("the shipped price book says that it is invented") {
  const PriceBook& book = shipped_price_book();
  CHECK(book.invented);
  CHECK(grow::book_words(book).find("invented prices, to be replaced by your own quotes") != std::string::npos);
  CHECK(book.prices.size() > 30);
  PriceBook renamed = book;
  renamed.name = "Ours";
  CHECK(grow::book_words(renamed).find("invented prices, to be replaced by your own quotes") != std::string::npos);
  renamed.invented = false;
  CHECK(grow::book_words(renamed) == "Ours (2025-01-01, USD)");
}

TEST_CASE("a price is for each, or for a measure in its own unit") {
  const grow::Quantities two = quantities_of({Dryer{}, Leg{.discharge_height_m = 80 * ft, .boot = {.depth_m = 0}},
                                              Leg{.discharge_height_m = 40 * ft, .boot = {.depth_m = 0}},
                                              Culvert{.path = {{0, 0}, {20 * ft, 0}}}});
  const grow::Cost cost = grow::cost_of(two, book_of(R"(
      {"work": "leg", "price": 1000, "per": "ft"}, {"work": "dryer", "price": 150000, "per": "each"},
      {"work": "culvert", "price": 50, "per": "m"}, {"work": "machine-slab", "price": 0, "per": "yd3"})"));
  // 120 ft of leg, a dryer, 6.096 m of pipe; a slab for nothing, because the book says so.
  CHECK(cost.sum == Approx(120 * 1000 + 150000 + 6.096 * 50));
  CHECK(cost.without_price == 0);
  // 32 x 12 x 2/3 ft of slab are 256 ft3, 9.4815 yd3.
  CHECK(grow::cost_of(two, book_of(R"({"work": "machine-slab", "price": 270, "per": "yd3"})")).sum == Approx(2560));
  CHECK(grow::cost_of(two, book_of(R"({"work": "leg", "price": 7, "per": "each"})")).sum == Approx(14));
}

TEST_CASE("the price of a size comes before that of all sizes") {
  const PriceBook book = book_of(R"({"work": "bin", "price": 3, "per": "bu"},
      {"work": "bin", "size": "36 ft x 24 ft", "price": 50000, "per": "each"},
      {"work": "tile-line", "size": "200 mm", "price": 9, "per": "m"})");
  CHECK(price_of(book, Work::bin, {36 * ft, 24 * ft})->price == 50000);
  CHECK(price_of(book, Work::bin, {36 * ft, 30 * ft})->price == 3);
  CHECK(price_of(book, Work::tile_line, {0.2})->price == 9);
  CHECK(price_of(book, Work::tile_line, {0.3}) == nullptr);
  CHECK(price_of(book, Work::culvert, {0.2}) == nullptr);
}

TEST_CASE("what has no price is told and never counted as nothing") {
  const grow::Quantities things = quantities_of({Dryer{}, Scale{}});
  const PriceBook book = book_of(R"({"work": "dryer", "price": 5, "per": "each"})");
  const grow::Cost cost = grow::cost_of(things, book);
  CHECK(cost.sum == 5);
  CHECK(cost.without_price == 2);  // the dryer's slab and the scale
  CHECK(grow::total_words(cost, book) == "5.00 EUR, and 2 works without a price");
  const grow::CostLine& scale = cost.lines[1];
  CHECK(scale.line.work == Work::scale);
  CHECK_FALSE(scale.sum);
  CHECK(grow::price_words(scale.price, book) == "no price");
  CHECK(grow::sum_words(scale.sum) == "no price");
  CHECK(grow::total_words(grow::cost_of(things, book_of("")), book) == "3 works without a price");
}

TEST_CASE("a broken price book is refused with its line, what is wrong and what to do") {
  CHECK(refused_of("[1, 2]").front().what == "is no price book");
  CHECK(refused_of("{\n\"prices\": 1,,}").front().where.starts_with("own.json, line 2"));
  CHECK(refused_of(R"({"prices": 2, "date": "d", "currency": "c", "list": []})").front().mend == "give \"prices\": 1");
  CHECK(refused_of(R"({"prices": 1})").size() == 3);
  CHECK(refused_of(R"({"prices": 1, "date": "d", "currency": "c", "lst": []})").front().mend.find("list") !=
        std::string::npos);
  const auto says = [](const Problem& problem, std::string_view what, std::string_view mend) {
    INFO(sentence(problem));
    CHECK(problem.where == "own.json, line 2");
    CHECK(problem.what.find(what) != std::string::npos);
    CHECK(problem.mend.find(mend) != std::string::npos);
  };
  says(refused_price(R"({"work": "bim", "price": 1, "per": "each"})"), "\"bim\"", "bin");
  says(refused_price(R"({"work": "bin", "price": -1, "per": "each"})"), "-1", "0 or more");
  says(refused_price(R"({"work": "bin", "price": "3 EUR", "per": "each"})"), "no number", "number");
  says(refused_price(R"({"work": "bin", "price": 1})"), "\"per\" is not given", "per");
  says(refused_price(R"({"work": "bin", "price": 1, "per": "ft"})"), "not measured in \"ft\"", "each, m3, bu");
  says(refused_price(R"({"work": "dryer", "price": 1, "per": "ft"})"), "not measured in \"ft\"", "use each");
  says(refused_price(R"({"work": "dryer", "size": "3 ft", "price": 1, "per": "each"})"), "no size", "out");
  says(refused_price(R"({"work": "bin", "size": "36 ft", "price": 1, "per": "each"})"), "1 sizes", "two");
  says(refused_price(R"({"work": "bin", "size": "36 kg x 3", "price": 1, "per": "each"})"), "36 kg", "ft");
  says(refused_price(R"(7)"), "a number", "work");
  says(refused_price(R"({"work": "bin", "price": 1, "per": "each"}, {"work": "bin", "price": 2, "per": "bu"})"),
       "two prices", "size");
}

TEST_CASE("a price book beside a yard is found by its name") {
  CHECK(price_book_path("a/home.yard") == std::filesystem::path{"a/home.prices.json"});
  const auto none = price_book_beside("/no-such-folder/home.yard");
  REQUIRE(none);
  CHECK_FALSE(*none);
}
