// The line along which the side view cuts the ground: what is measured, else the one selected item that is drawn as a line.
#pragma once

#include "editor/session/session.hpp"
#include "geom/check/check.hpp"

namespace yardwright::session {

struct ShownLine {
  SitePath path;
  ItemId along;       ///< none for what is measured
  std::string title;  ///< "along Loop", "along the measured line"
  bool operator==(const ShownLine&) const = default;
};

/// Nothing where there is none, or it has no length yet.
std::optional<ShownLine> shown_line(const Session& session);

/// From west to east through what is selected, else through what the pointed or the worst finding of Drain is about.
std::optional<ShownLine> line_through_place(const Session& session, const Answers& answers);

}  // namespace yardwright::session
