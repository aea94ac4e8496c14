#include "editor/cli/priced_site.hpp"

#include "editor/cli/site_at.hpp"
#include "geom/io/price_book.hpp"

namespace yardwright::cli {

Expected<Site> built_site(const std::string& file, std::optional<int> phase, const std::string& option) {
  auto site = site_at(file, phase);
  if (!site) {
    for (Problem& problem : site.error()) {
      if (problem.where == "--phase") problem.where = option;
    }
    return site;
  }
  if (phase) return site;
  return as_of(*site, static_cast<int>(site->phases.size()) - 1);
}

Expected<PriceBook> prices_for(const std::string& site_file, const std::string& named) {
  return named.empty() ? price_book_for(site_file) : load_price_book(named);
}

}  // namespace yardwright::cli
