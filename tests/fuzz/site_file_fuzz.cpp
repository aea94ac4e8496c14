// Any bytes handed to read_site: no crash, and what is read comes back from its own text. How to run it: DEVELOPERS.md.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "geom/io/site_file.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  using namespace yardwright;
  const std::string_view text{reinterpret_cast<const char*>(bytes), size};
  const auto site = read_site(text, "fuzz.yard");
  if (!site) return site.error().empty() ? (std::abort(), 0) : 0;
  const auto again = read_site(write_site(*site), "fuzz.yard");
  if (!again || !(*again == *site)) std::abort();
  return 0;
}
