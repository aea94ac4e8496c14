// The plan set from the window: the same sheets as `yardwright sheet` writes, beside the yard's file.
#pragma once

#include "editor/session/session.hpp"
#include "editor/session/storm_desk.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

/// "home-plan.pdf" beside "home.yard", as the yard stands in the phase that is shown, on tabloid or A3 paper; the notice
/// says where. Needs a saved yard. The questions are asked anew, so that no stale answer is printed; a storm has its
/// sheets where it is still that of the yard.
tl::expected<void, Problems> write_plan_set(Session& session, const Catalogs& catalogs,
                                            const std::shared_ptr<const StormRecord>& storm = {});

}  // namespace yardwright::session
