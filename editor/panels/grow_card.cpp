#include "editor/panels/grow_card.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "editor/panels/field_row.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/session/shown_rows.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

using session::GrowRecord;

std::string length_words(const Workspace& work, double metres) {
  return text_of(metres, Quantity::length, work.units());
}

std::string area_words(const Workspace& work, double m2) { return text_of(m2, Quantity::area, work.units()); }

/// Every kind that stands on ground of its own.
std::vector<session::Choice> kinds_that_stand() {
  std::vector<session::Choice> choices;
  for (const Thing& thing : every_kind()) {
    if (footprint(thing) && path_of(thing) == nullptr)
      choices.push_back({std::string{kind_key(thing)}, std::string{kind_label(thing)}});
  }
  return choices;
}

/// What a size says of where a thing can stand; the rest of its fields are set once it stands.
bool says_where(std::string_view key) {
  constexpr std::array<std::string_view, 10> keys{"diameter", "eave",   "use",         "facing",   "length",
                                                  "width",    "height", "unload-side", "fan-side", "contents"};
  return std::ranges::find(keys, key) != keys.end();
}

void show_kind(const Workspace& work, const Thing& sought) {
  row_label(work, "room for a", "what is to be placed next");
  const auto chosen = choice_field("##sought", kinds_that_stand(), std::string{kind_key(sought)}, room_for_field());
  if (!chosen) return;
  work.state.sought = thing_of_kind(*chosen);
  session::take_tool(work.session, {});
}

void show_sizes(const Workspace& work, const Thing& sought) {
  for (const session::FieldRow& row : session::shown_rows(sought, work.units(), work.catalogs)) {
    if (!says_where(row.key)) continue;
    const auto typed = field_row(work, row);
    if (!typed) continue;
    const auto thing = session::with_field(sought, row.key, *typed, work.units());
    keep_refusal(work, row.key, thing ? nullptr : &thing.error());
    if (!thing) continue;
    work.state.sought = *thing;
    if (work.session.tool.doing == session::Doing::place) work.session.tool.thing = *thing;
  }
}

void show_taking(const Workspace& work, const Thing& sought) {
  if (pill("take one in hand", work.look)) session::take_tool(work.session, session::tool_for(sought));
  hint("It follows the pointer, which tells what is in its way; a click puts it.");
  if (work.state.sought) {
    ImGui::SameLine(0, work.look.px(8));
    if (pill("like the last bin", work.look)) work.state.sought.reset();
  }
}

void show_spots(const Workspace& work, const GrowRecord& ground) {
  const grow::Answer& answer = ground.answer;
  small_words(work, answer.free_m2 > 0 ? area_words(work, answer.free_m2) + " of ground for its middle, drawn green"
                                       : "no ground for its middle that is against no rule");
  int number = 0;
  for (const grow::Spot& spot : answer.spots) {
    ImGui::PushID(++number);
    small_words(work,
                fmt::format("{}  {} to spare any way{}", number, length_words(work, spot.margin_m),
                            spot.free ? "" : ", against advice"),
                palette::ink);
    if (pill("place it", work.look, number == 1)) session::place_newcomer(work.session, ground, {spot.at});
    ImGui::SameLine(0, work.look.px(8));
    if (pill("show", work.look)) work.session.look_at = grown(box_of({spot.at}), 25);
    ImGui::PopID();
  }
}

void show_counting(const Workspace& work) {
  small_words(work, fmt::format("{} fit so far, looking for one more ...", work.rooms.found()));
  if (pill("stop", work.look)) work.rooms.stop();
}

void show_taller(const Workspace& work, const session::RoomRecord& room) {
  const Site& site = room.of->asked.site;
  for (const session::TallerLeg& one : room.taller) {
    const Item* leg = find(site, one.leg);
    if (leg == nullptr || one.heights.empty()) continue;
    ImGui::Dummy({0, work.look.px(4)});
    words(title_of(*leg) + " made taller", work.look.letters.strong, palette::ink);
    small_words(work, fmt::format("by a quick packing, on a distributor of {} outlets", grow::outlets_of_taller_leg));
    const grow::AtHeight* best = grow::best_gain(one.heights);
    for (const grow::AtHeight& at : one.heights) {
      small_words(work,
                  fmt::format("{}: {} of ground, {} fit{}", length_words(work, at.discharge_m),
                              area_words(work, at.free_m2), at.bins, &at == best ? ", most for its height" : ""),
                  &at == best ? palette::pass : palette::quiet_ink);
    }
  }
}

void show_found(const Workspace& work, const session::RoomRecord& room) {
  const auto count = room.room.places.size();
  words(fmt::format("{} more fit at once", count), work.look.letters.strong, palette::ink);
  small_words(work, fmt::format("no layout has more than {}{}", room.room.at_most,
                                room.whole ? "" : "; stopped before all was tried"));
  if (!room.room.of_free_ground && count > 0) small_words(work, "all against advice", palette::caution);
  if (count > 0 && pill("build them", work.look)) session::place_newcomer(work.session, *room.of, room.room.places);
  if (count > 0) hint("All of them at once, in the phase that is shown; undo takes them back.");
  show_taller(work, room);
}

void show_room(const Workspace& work, const std::shared_ptr<const GrowRecord>& ground) {
  ImGui::Dummy({0, work.look.px(4)});
  if (work.rooms.is_counting() && work.rooms.record() == nullptr) return show_counting(work);
  const auto room = work.rooms.record();
  const bool of_this = room != nullptr && room->of == ground;
  if (!of_this && pill("how many fit?", work.look, true)) work.rooms.count(ground);
  if (!of_this)
    hint("Looks for as many of them as fit at once, and for what taller legs would gain; goes on beside your work.");
  if (of_this) show_found(work, *room);
  if (of_this && work.rooms.is_counting()) small_words(work, "trying taller legs ...");
}

}  // namespace

void show_grow_card(const Workspace& work) {
  const Thing sought = session::thing_sought(work.session, work.state.sought);
  ImGui::PushID("sought");
  show_kind(work, sought);
  show_sizes(work, sought);
  ImGui::PopID();
  show_taking(work, sought);
  const auto ground = work.growth.record();
  if (ground == nullptr || !ground->newcomer) return;
  ImGui::Dummy({0, work.look.px(4)});
  if (!is_of(*ground, work.session, work.state.sought)) return small_words(work, "looking for its ground ...");
  show_spots(work, *ground);
  show_room(work, ground);
  ImGui::Dummy({0, work.look.px(6)});
}

}  // namespace yardwright::panels
