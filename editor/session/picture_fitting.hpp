// Fitting a picture with the fit tool: two points are clicked in it, and then what is known of them is typed. The points
// stay on the same spots of the picture while it moves under them.
#pragma once

#include "editor/session/field_rows.hpp"
#include "editor/session/session.hpp"

namespace yardwright::session {

/// What can be typed of the two points: "distance", "bearing", "a" and "b". Empty until both are clicked.
std::vector<FieldRow> fit_rows(const Session& session);

/// One undoable step, or a Problem where the text cannot be taken.
tl::expected<void, Problem> fit_by(Session& session, std::string_view key, std::string_view text);

/// "36ft, 11m": east and north.
tl::expected<SitePoint, Problem> parse_place(std::string_view text, UnitSystem units);

}  // namespace yardwright::session
