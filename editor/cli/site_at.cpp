#include "editor/cli/site_at.hpp"

#include <fmt/format.h>

#include "geom/grow/grow.hpp"
#include "geom/io/site_file.hpp"

namespace yardwright::cli {

Expected<Site> site_at(const std::string& file, std::optional<int> phase) {
  auto in_time = site_in_time(file, phase);
  if (!in_time) return tl::unexpected{in_time.error()};
  return std::move(in_time->site);
}

Expected<SiteInTime> site_in_time(const std::string& file, std::optional<int> phase) {
  auto site = load_site(file);
  if (!site) return tl::unexpected{site.error()};
  if (!phase) return SiteInTime{std::move(*site), {}};
  const int last = static_cast<int>(site->phases.size()) - 1;
  if (*phase < 0 || *phase > last) {
    return refused(fmt::format("{} has no phase {}", site->name, *phase), "--phase", fmt::format("give 0 to {}", last));
  }
  return SiteInTime{as_of(*site, *phase), grow::built_after(*site, *phase)};
}

}  // namespace yardwright::cli
