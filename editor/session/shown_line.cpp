#include "editor/session/shown_line.hpp"

#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

constexpr double half_length_m = 100 * foot_m;

const Item* item_of(const Site& site, const Finding& finding) {
  for (const ItemId id : finding.items)
    if (const Item* item = find(site, id)) return item;
  return nullptr;
}

const Item* item_in_question(const Session& session, const Answers& answers) {
  if (const Item* item = lone_selected(session)) return item;
  const Findings& findings = answers.drain->findings;
  for (const Finding& finding : findings) {
    const bool is_pointed = !finding.id.empty() && finding.id == session.pointed_finding;
    if (const Item* item = is_pointed ? item_of(session.site(), finding) : nullptr) return item;
  }
  for (const Finding& finding : findings)
    if (const Item* item = item_of(session.site(), finding)) return item;
  return nullptr;
}

}  // namespace

std::optional<ShownLine> shown_line(const Session& session) {
  const Tool& tool = session.tool;
  if (tool.doing == Doing::measure && tool.points.size() == 2 && length(tool.points) > 0)
    return ShownLine{tool.points, {}, "along the measured line"};
  const Item* item = lone_selected(session);
  if (item == nullptr || is_ring(item->thing)) return std::nullopt;
  const SitePath* path = path_of(item->thing);
  if (path == nullptr || !(length(*path) > 0)) return std::nullopt;
  return ShownLine{*path, item->id, "along " + title_of(*item)};
}

std::optional<ShownLine> line_through_place(const Session& session, const Answers& answers) {
  const Item* item = item_in_question(session, answers);
  if (item == nullptr) return std::nullopt;
  const SiteVector east{half_length_m, 0};
  const SitePoint middle = place_of(item->thing);
  return ShownLine{{middle - east, middle + east}, {}, "west to east through " + title_of(*item)};
}

}  // namespace yardwright::session
