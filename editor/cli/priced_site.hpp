// The yard and the prices of the verbs about money: each state of the yard as it stands once a phase is built, and the price
// book that is named, else the one beside the yard, else the shipped one.
#pragma once

#include <optional>
#include <string>

#include "geom/site/catalog/price_book.hpp"
#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::cli {

/// As it stands once the phase is built, or its last one. `option` is what the phase was given by.
Expected<Site> built_site(const std::string& file, std::optional<int> phase, const std::string& option = "--phase");

Expected<PriceBook> prices_for(const std::string& site_file, const std::string& named);

}  // namespace yardwright::cli
