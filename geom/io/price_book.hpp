// Reads price books: the shipped one of assets/prices.json, which is invented, and a yard's own, a file of the same form
// named by hand or lying beside the yard as NAME.prices.json. docs/methods/grow.md
#pragma once

#include <filesystem>
#include <optional>
#include <string_view>

#include "geom/site/catalog/price_book.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

const PriceBook& shipped_price_book();
/// Its text, as the beginning of one's own.
std::string_view shipped_price_book_text();

/// Every problem of a text, not only the first; `name` is the file's name for them.
Expected<PriceBook> price_book_in(std::string_view text, std::string_view name);
Expected<PriceBook> load_price_book(const std::filesystem::path& file);

/// home.prices.json of home.yard.
std::filesystem::path price_book_path(const std::filesystem::path& site_file);
/// The book beside a yard; nothing where there is none.
Expected<std::optional<PriceBook>> price_book_beside(const std::filesystem::path& site_file);
/// The one beside it where there is one, else the shipped.
Expected<PriceBook> price_book_for(const std::filesystem::path& site_file);

}  // namespace yardwright
