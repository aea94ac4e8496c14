// Pages into files: every page into one PDF, or a page a file as SVG or PNG (plan.png, plan-2.png, ...). A file
// is replaced at once or not at all.
#pragma once

#include <filesystem>
#include <vector>

#include "geom/sheet/page.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

inline constexpr double picture_dots_per_inch = 144;

/// The files that were written. What they are follows from the ending: .pdf, .svg or .png.
Expected<std::vector<std::filesystem::path>> write_pages(const std::vector<Page>& pages,
                                                         const std::filesystem::path& path, const std::string& title);

/// "plan-2.png" for page 2 of "plan.png".
std::filesystem::path path_of_page(const std::filesystem::path& path, std::size_t number);

}  // namespace yardwright
