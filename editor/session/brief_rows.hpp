// A brief of proposals as rows of text, and typed text back into it, as the Grow card shows it.
#pragma once

#include "editor/session/field_rows.hpp"
#include "editor/session/proposal_desk.hpp"
#include "geom/check/check.hpp"

namespace yardwright::session {

/// What is asked for until something is typed: as much storage again as there is, in bins of the sizes that stand, with legs as
/// they are or up to three steps taller. `answers` are of the site's last phase.
GrowthBrief usual_brief(const Site& site, const Answers& answers, const RuleBook& rules);

std::vector<FieldRow> brief_rows(const ProposalAsk& ask, UnitSystem units, const Catalogs& catalogs);

/// With one row typed anew; a Problem whose `where` is the row's label where the text cannot be taken.
tl::expected<ProposalAsk, Problem> with_brief_row(ProposalAsk ask, std::string_view key, std::string_view text,
                                                  UnitSystem units);

}  // namespace yardwright::session
