#include "editor/panels/yard_card.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/panels/field_row.hpp"
#include "editor/session/lot_edits.hpp"
#include "editor/session/picture_fitting.hpp"
#include "editor/session/question_words.hpp"
#include "editor/session/yard_fields.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

using session::YardPart;

void heading(const Workspace& work, const char* text) {
  ImGui::Dummy({0, work.look.px(4)});
  words(text, work.look.letters.strong, palette::ink);
}

void quiet(const Workspace& work, const std::string& text) {
  words(text, work.look.letters.small, palette::quiet_ink, true);
}

void show_part(const Workspace& work, YardPart part) {
  for (const session::FieldRow& row : session::yard_rows(work.session.site(), part, work.catalogs)) {
    const auto typed = field_row(work, row);
    if (!typed) continue;
    const auto edit = session::with_yard_field(work.session.history.settled(), row.key, *typed);
    keep_refusal(work, row.key, edit ? nullptr : &edit.error());
    if (edit) session::perform(work.session, {*edit});
  }
}

std::string edge_title(const Workspace& work, int edge) {
  const auto [from, to] = session::lot_edge(work.session.site().lot, edge);
  return fmt::format("{} edge, {}", session::side_of(work.session.site().lot, edge),
                     text_of(distance(from, to), Quantity::length, work.units()));
}

/// What lies across an edge, as a row.
void edge_row(const Workspace& work, int edge, const std::string& label) {
  const Lot& lot = work.session.site().lot;
  session::FieldRow row{fmt::format("edge.{}", edge), "", label, "what lies across this edge of the lot",
                        session::RowKind::choice,     {}, {}};
  const auto names = names_of(LotEdge{});
  for (const std::string_view name : names) row.choices.push_back({std::string{name}, session::spoken(name)});
  row.text = names[static_cast<std::size_t>(lot.edges[static_cast<std::size_t>(edge)])];
  const auto chosen = field_row(work, row);
  if (!chosen) return;
  const auto at = std::ranges::find(names, *chosen);
  session::perform(work.session, {SetLot{session::with_edge(lot, edge, static_cast<LotEdge>(at - names.begin()))}});
}

void show_lot(const Workspace& work) {
  heading(work, "Lot");
  const Lot& lot = work.session.site().lot;
  if (lot.corners.empty())
    quiet(work, "There is none yet.");
  else
    quiet(work, text_of(area_m2(Polygon{lot.corners, {}}), Quantity::area, work.units()) +
                    "; click an edge of it on the plan to change it there.");
  for (int edge = 0; edge < static_cast<int>(work.session.site().lot.corners.size()); ++edge)
    edge_row(work, edge, edge_title(work, edge));
  if (pill("draw the lot anew", work.look)) session::take_tool(work.session, session::lot_tool());
}

void show_phases(const Workspace& work) {
  heading(work, "Phases");
  show_part(work, YardPart::phases);
  if (pill("add a phase", work.look)) session::perform(work.session, {session::phase_added(work.session.site())});
  const auto removal = session::last_phase_removed(work.session.site());
  if (!removal) return;
  ImGui::SameLine();
  if (!pill("take the last away", work.look)) return;
  session::perform(work.session, {*removal});
  work.session.phase = std::min(work.session.phase, static_cast<int>(work.session.site().phases.size()) - 1);
}

std::string ground_words(const Workspace& work) {
  const Ground& ground = work.session.site().ground;
  if (ground.levels.empty()) return "No levels yet: the yard is taken as flat.";
  const GridFrame& frame = ground.levels.frame();
  const auto length = [&](double m) { return text_of(m, Quantity::length, work.units()); };
  return fmt::format("{} by {}, cells of {}{}", length(frame.columns * frame.cell_m), length(frame.rows * frame.cell_m),
                     length(frame.cell_m), ground.source.empty() ? "" : "; " + ground.source);
}

void show_ground(const Workspace& work) {
  heading(work, "Ground");
  quiet(work, ground_words(work));
  if (pill("bring in levels ...", work.look)) work.state.wish = FileWish::ground;
  show_part(work, YardPart::tie);
}

void show_picture_row(const Workspace& work, const Item& item) {
  ImGui::PushID(item.id.number);
  row_label(work, title_of(item), as<Picture>(item)->file);
  if (pill("select", work.look)) session::select(work.session, item.id);
  ImGui::SameLine();
  if (pill("fit", work.look)) session::take_tool(work.session, session::fit_tool(item.id));
  ImGui::PopID();
}

void show_pictures(const Workspace& work) {
  heading(work, "Pictures under the plan");
  for (const Item& item : work.session.site().items) {
    if (as<Picture>(item) != nullptr) show_picture_row(work, item);
  }
  if (pill("lay one under ...", work.look)) work.state.wish = FileWish::picture;
}

}  // namespace

void show_storm(const Workspace& work) {
  show_part(work, YardPart::storm);
  if (pill("bring in a rain table ...", work.look)) work.state.wish = FileWish::rain;
  hint("The text export of a point of NOAA Atlas 14.");
}

void show_yard_card(const Workspace& work) {
  words("Yard", work.look.letters.title, palette::ink);
  if (pill_at_right("back to " + std::string{session::name_of(work.session.question)}, work.look))
    work.state.shows_yard = false;
  quiet(work, "What holds for all of it.");
  heading(work, "Title block");
  show_part(work, YardPart::title);
  show_lot(work);
  show_phases(work);
  heading(work, "Storm");
  show_storm(work);
  show_ground(work);
  show_pictures(work);
}

void show_lot_edge_card(const Workspace& work, int edge) {
  words("Edge of the lot", work.look.letters.title, palette::ink);
  quiet(work, edge_title(work, edge));
  ImGui::Dummy({0, work.look.px(2)});
  edge_row(work, edge, "across it");
  quiet(work, "Drag a corner to move it, or the dot on an edge to make a new one.");
  const Lot lot = work.session.site().lot;
  if (lot.corners.size() > 3) {
    if (pill("take its first corner away", work.look))
      session::perform(work.session, {SetLot{session::without_corner(lot, edge)}});
    ImGui::SameLine();
  }
  if (pill("done", work.look)) session::select_nothing(work.session);
}

void show_fit_card(const Workspace& work) {
  const Item* item = find(work.session.site(), work.session.tool.from);
  words("Fit " + (item != nullptr ? title_of(*item) : "a picture"), work.look.letters.title, palette::ink);
  const auto rows = session::fit_rows(work.session);
  quiet(work, rows.empty()
                  ? "Click two points in the picture, A and B, that lie far apart and of which you know how far, or "
                    "where they lie on the site."
                  : "Type what you know; the picture follows. Ctrl+Z takes a step back, a third click begins anew.");
  ImGui::Dummy({0, work.look.px(2)});
  for (const session::FieldRow& row : rows) {
    const auto typed = field_row(work, row);
    if (!typed) continue;
    const auto done = session::fit_by(work.session, row.key, *typed);
    keep_refusal(work, row.key, done ? nullptr : &done.error());
  }
  if (pill("done", work.look, !rows.empty())) session::finish_tool(work.session);
}

}  // namespace yardwright::panels
