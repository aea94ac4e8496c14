// What is said of the whole yard rather than of one thing on it: the words of the title block, the storm, the tie to the
// earth, the phases. As rows to show, and typed text back as an edit.
#pragma once

#include "editor/session/field_rows.hpp"
#include "geom/site/edit.hpp"

namespace yardwright::session {

enum class YardPart : std::uint8_t { title, storm, tie, phases };

/// Those that apply as the yard is; their keys begin with the part's name: "storm.rain".
std::vector<FieldRow> yard_rows(const Site& site, YardPart part, const Catalogs& catalogs);

/// A Problem where the text cannot be taken.
tl::expected<Edit, Problem> with_yard_field(const Site& site, std::string_view key, std::string_view text);

/// One phase more, after the last.
Edit phase_added(const Site& site);
/// The last phase goes, with nothing built or taken away in it; nothing where something is, or where it is the only one.
std::optional<Edit> last_phase_removed(const Site& site);

}  // namespace yardwright::session
