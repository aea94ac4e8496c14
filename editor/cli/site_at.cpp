#include "editor/cli/site_at.hpp"

#include <fmt/format.h>

#include "geom/io/site_file.hpp"

namespace yardwright::cli {

Expected<Site> site_at(const std::string& file, std::optional<int> phase) {
  auto site = load_site(file);
  if (!site || !phase) return site;
  const int last = static_cast<int>(site->phases.size()) - 1;
  if (*phase < 0 || *phase > last) {
    return refused(fmt::format("{} has no phase {}", site->name, *phase), "--phase", fmt::format("give 0 to {}", last));
  }
  return as_of(*site, *phase);
}

}  // namespace yardwright::cli
