// The plan set of a yard: the plan at a true standard scale, the tables of its spouts, bins and items, and every
// finding with what would mend it. Pages in paper millimetres; page 1 is the plan. docs/methods/sheet.md
#pragma once

#include <array>
#include <limits>
#include <optional>

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/page.hpp"
#include "geom/sheet/plan_drawing.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

enum class Paper : std::uint8_t { letter, tabloid, ansi_d, a4, a3, a1 };
constexpr std::array<std::string_view, 6> names_of(Paper) { return {"letter", "tabloid", "ansi-d", "a4", "a3", "a1"}; }

enum class Orientation : std::uint8_t { landscape, portrait };
constexpr std::array<std::string_view, 2> names_of(Orientation) { return {"landscape", "portrait"}; }

struct SheetOptions {
  Paper paper = Paper::tabloid;
  Orientation orientation = Orientation::landscape;
  std::optional<double> scale_ratio;  ///< 480 is 1 in = 40 ft; else the largest standard scale that fits
  std::vector<PicturePixels> pictures = {};  ///< that lie under the plan
  int built_phase = std::numeric_limits<int>::max();  ///< what later phases build is drawn faded
};

/// Refused where the yard does not fit on the paper at the wanted scale.
Expected<std::vector<Page>> plan_sheets(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                        const Findings& findings, const SheetOptions& options = {});

/// The plan alone, its page cut to the yard, for a picture.
Page plan_picture(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Findings& findings,
                  std::vector<PicturePixels> pictures = {});

}  // namespace yardwright
