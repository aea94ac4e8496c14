// The plan set of a yard: the general plan at a true standard scale, a plan of each question with what it computed and
// its findings at their places, sections of the ground, the tables of spouts, bins, items and quantities, every finding
// with what would mend it, and the cautions. Pages in paper millimetres; page 1 is the general plan. docs/methods/sheet.md
#pragma once

#include <array>
#include <limits>
#include <memory>
#include <optional>

#include "geom/check/check.hpp"
#include "geom/drain/storm/storm.hpp"
#include "geom/sheet/page.hpp"
#include "geom/sheet/plan_drawing.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/catalog/price_book.hpp"
#include "geom/site/finding.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

enum class Paper : std::uint8_t { letter, tabloid, ansi_d, a4, a3, a1 };
constexpr std::array<std::string_view, 6> names_of(Paper) { return {"letter", "tabloid", "ansi-d", "a4", "a3", "a1"}; }

enum class Orientation : std::uint8_t { landscape, portrait };
constexpr std::array<std::string_view, 2> names_of(Orientation) { return {"landscape", "portrait"}; }

/// A storm that was run over the yard, for a plan and a table of its own.
struct StormSheet {
  drain::storm::StormStory story;
  Findings findings;
  std::string mishap;  ///< "the power fails: no pump runs"
};

struct SheetOptions {
  Paper paper = Paper::tabloid;
  Orientation orientation = Orientation::landscape;
  std::optional<double>
      scale_ratio;  ///< of the general plan: 480 is 1 in = 40 ft; else the largest standard scale that fits
  int built_phase = std::numeric_limits<int>::max();  ///< what later phases build is drawn faded
  std::vector<PicturePixels> pictures = {};           ///< that lie under the general plan
  std::shared_ptr<const StormSheet> storm = {};
  std::optional<PriceBook> prices = {};  ///< the yard's own: invented ones are not printed
};

/// Refused where the yard does not fit on the paper at the wanted scale.
Expected<std::vector<Page>> plan_sheets(const Site& site, const Answers& answers, const Catalogs& catalogs,
                                        const SheetOptions& options = {});

/// The plan alone, its page cut to the yard, for a picture.
Page plan_picture(const Site& site, const Answers& answers, const Catalogs& catalogs,
                  std::vector<PicturePixels> pictures = {});

}  // namespace yardwright
