// Writes the demo yards into a folder: build/tests/write_demo_yards assets/yards
#include <fmt/format.h>

#include <cstdio>
#include <filesystem>

#include "geom/io/site_file.hpp"
#include "tests/scenes/demo_yards.hpp"

namespace {

int write(const yardwright::Site& site, const std::filesystem::path& path) {
  const auto saved = yardwright::save_site(site, path);
  if (saved) return 0;
  for (const auto& problem : saved.error()) fmt::print(stderr, "{}\n", sentence(problem));
  return 1;
}

}  // namespace

int main(int count, char** words) {
  if (count != 2) return fmt::print(stderr, "usage: write_demo_yards FOLDER\n"), 2;
  const std::filesystem::path folder = words[1];
  std::filesystem::create_directories(folder);
  return write(yardwright::scenes::old_yard(), folder / "old-yard.yard") +
         write(yardwright::scenes::new_yard(), folder / "new-yard.yard");
}
