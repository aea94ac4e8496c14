#include "geom/sheet/sheet_table.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

const SheetBox box{{10, 10}, {190, 130}};

Table table_of(int rows) {
  Table table{"Bins", "as built", {}, {}};
  table.columns = {{"bin", 1}, {"note", 1}};
  for (int row = 0; row < rows; ++row) table.rows.push_back({{fmt::format("row {}", row)}, {"kept"}});
  return table;
}

int rows_on(const Drawing& page) {
  return static_cast<int>(std::ranges::count_if(page.marks, [](const Mark& mark) {
    const TextMark* text = std::get_if<TextMark>(&mark);
    return text != nullptr && text->text == "kept";
  }));
}

}  // namespace

TEST_CASE("However many rows a table has, none is lost and none stands alone on the last page") {
  const TextMeasure measure;
  for (int rows = 2; rows < 120; ++rows) {
    INFO(rows << " rows");
    const std::vector<Drawing> pages = flow_tables({table_of(rows)}, box, measure);
    int sum = 0;
    for (const Drawing& page : pages) sum += rows_on(page);
    CHECK(sum == rows);
    CHECK(rows_on(pages.back()) >= 2);
  }
}

TEST_CASE("A table after another begins with two rows under its title, or on the next page") {
  const TextMeasure measure;
  for (int before = 2; before < 60; ++before) {
    INFO(before << " rows before");
    const std::vector<Drawing> pages = flow_tables({table_of(before), table_of(2)}, box, measure);
    const auto titles = [](const Drawing& page) {
      return std::ranges::count_if(page.marks, [](const Mark& mark) {
        const TextMark* text = std::get_if<TextMark>(&mark);
        return text != nullptr && text->text == "Bins";
      });
    };
    CHECK(titles(pages.back()) >= 1);
    CHECK(rows_on(pages.back()) >= 2);
  }
}

TEST_CASE("A row higher than a page is told on as many pages as it needs") {
  const TextMeasure measure;
  Table table = table_of(2);
  for (int word = 0; word < 3000; ++word) table.rows[1][0].text += fmt::format(" word{}", word);
  const std::vector<Drawing> pages = flow_tables({table}, box, measure);
  CHECK(pages.size() > 3);
  std::string words;
  for (const Drawing& page : pages) {
    for (const Mark& mark : page.marks) {
      if (const TextMark* text = std::get_if<TextMark>(&mark)) words += text->text + " ";
    }
  }
  for (const int word : {0, 1500, 2999}) CHECK(words.find(fmt::format("word{} ", word)) != std::string::npos);
}
