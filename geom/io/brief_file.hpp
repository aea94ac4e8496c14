// Reads briefs of what a yard is to grow by: a small JSON file. docs/methods/grow.md
#pragma once

#include <filesystem>
#include <string_view>

#include "geom/site/growth_brief.hpp"
#include "geom/units/problem.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

/// Every problem of a text, not only the first; `name` is the file's name for them. Numbers without a unit are in the shown
/// unit of `bare`. What a brief must have to be sought by, such as a size of bin, is asked for when it is.
Expected<GrowthBrief> growth_brief_in(std::string_view text, std::string_view name, UnitSystem bare);
Expected<GrowthBrief> load_growth_brief(const std::filesystem::path& file, UnitSystem bare);

/// "36ft x 24ft", diameter and eave height, each within what a bin can have.
tl::expected<BinSize, Problem> parse_bin_size(std::string_view text, UnitSystem bare);
/// A height that a leg can have.
tl::expected<double, Problem> parse_leg_height(std::string_view text, UnitSystem bare);

}  // namespace yardwright
