#include "editor/session/plan_set.hpp"

#include <fmt/format.h>

#include "geom/check/check.hpp"
#include "geom/drain/storm/storm_words.hpp"
#include "geom/grow/grow.hpp"
#include "geom/io/price_book.hpp"
#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_file.hpp"
#include "geom/sheet/site_pictures.hpp"

namespace yardwright::session {

tl::expected<void, Problems> write_plan_set(Session& session, const Catalogs& catalogs,
                                            const std::shared_ptr<const StormRecord>& storm) {
  if (!session.file)
    return refused("has no file yet", title_of(session), "save it first: the plan set is written beside it");
  const Site site = as_of(session.site(), session.phase);
  SheetOptions options;
  options.paper = site.units == UnitSystem::us ? Paper::tabloid : Paper::a3;
  options.built_phase = session.phase;
  auto prices = price_book_beside(*session.file);
  if (!prices) return tl::unexpected{prices.error()};
  options.prices = *std::move(prices);
  options.pictures = read_site_pictures(site, *session.file).pictures;
  if (storm && is_of(*storm, site)) {
    options.storm = std::make_shared<const StormSheet>(
        StormSheet{storm->story, storm->findings, drain::storm::mishap_words(site, storm->options)});
  }
  const Answers answers =
      grow::with_growth(check(site, catalogs), site, catalogs, grow::built_after(session.site(), session.phase));
  const auto pages = plan_sheets(site, answers, catalogs, options);
  if (!pages) return tl::unexpected{pages.error()};
  const auto file = session.file->parent_path() / (session.file->stem().string() + "-plan.pdf");
  const auto written = write_pages(*pages, file, site.name);
  if (!written) return tl::unexpected{written.error()};
  session.notice = fmt::format("The plan set is in {}: {} sheets on {} paper.", file.filename().string(), pages->size(),
                               names_of(options.paper)[static_cast<std::size_t>(options.paper)]);
  return {};
}

}  // namespace yardwright::session
