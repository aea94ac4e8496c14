#include "editor/window/app.hpp"

#include <algorithm>
#include <functional>

#include "editor/canvas/answer_overlay.hpp"
#include "editor/panels/layout.hpp"
#include "editor/panels/question_panel.hpp"
#include "editor/panels/side_view.hpp"
#include "editor/panels/status_line.hpp"
#include "editor/panels/storm_time_line.hpp"
#include "editor/panels/top_row.hpp"
#include "editor/panels/tray.hpp"
#include "editor/window/keyboard.hpp"

namespace yardwright::window {

App::App(session::Session session, const Catalogs& catalogs, look::Look look)
    : session_{std::move(session)},
      catalogs_{catalogs},
      look_{look},
      desk_{catalogs},
      storms_{catalogs},
      growth_{catalogs},
      proposals_{catalogs},
      mends_{catalogs} {
  look_.pictures = &pictures_;
  if (!look_.letters.is_inter) session_.notice = "Inter is not installed (fonts-inter); a plain font stands in.";
}

/// A small yard's answers are back within the frame and follow the hand; a large one's show as stale until they are.
void App::fetch_answers() {
  constexpr std::chrono::milliseconds part_of_frame{10};
  desk_.ask(as_of(session_.site(), session_.phase));
  desk_.wait(part_of_frame);
  answers_ = desk_.answers();
  storm_news_ = storms_.news();
}

/// Grow follows the hand while it is looked at, and else is asked once the yard rests; in both of the other questions' answers.
void App::fetch_growth() {
  constexpr std::chrono::milliseconds part_of_frame{10};
  const bool is_shown = session_.question == Question::grow;
  const bool current = std::ranges::none_of(answers_.stale, std::identity{});
  if (current && (is_shown || desk_.is_at_rest())) growth_.ask(session::grow_ask(session_, answers_, state_.sought));
  if (current && is_shown) growth_.wait(part_of_frame);
  grow_shown_ = {growth_.record(), rooms_.record(), proposals_.record(), nullptr};
  room_news_ = rooms_.news();
  proposal_news_ = proposals_.news();
  if (state_.proposal && state_.proposals_shown == grow_shown_.proposals && grow_shown_.proposals != nullptr)
    grow_shown_.proposal = &grow_shown_.proposals->found.list[*state_.proposal];
  if (grow_shown_.ground == nullptr) return;
  answers_.grow = std::make_shared<const Findings>(grow_shown_.ground->answer.findings);
  answers_.stale[static_cast<std::size_t>(Question::grow)] = !is_of(*grow_shown_.ground, session_, state_.sought);
}

/// The least changes are sought once the yard rests.
void App::fetch_mends() {
  const Site site = as_of(session_.site(), session_.phase);
  const bool current = std::ranges::none_of(answers_.stale, std::identity{});
  if (current && desk_.is_at_rest() && desk_.answers().revision == answers_.revision)
    mends_.ask(site, answers_, session_.question);
  mend_news_ = mends_.news();
  found_mends_ = mends_.record();
  if (found_mends_ != nullptr && !(found_mends_->site == site)) found_mends_ = nullptr;
}

void App::draw_over_plan(const session::View& view, ImDrawList& list) {
  const canvas::OverlayInput input{session_, view, canvas_.pointer, look_};
  const bool has_storm = session_.question == Question::drain && state_.shows_storm;
  if (has_storm) storm_overlay_.draw(storms_.record(), state_.storm_time_s, input, list);
  if (session_.question == Question::grow) grow_overlay_.draw(grow_shown_, input, list);
  canvas::draw_answer({session_, view, answers_, look_, canvas_.plan.drawn()}, kept_answers_, list);
  if (has_storm) canvas::tell_water(storms_.record(), state_.storm_time_s, input, list);
}

void App::frame() {
  const panels::Layout layout = panels::layout_of(ImGui::GetIO().DisplaySize, look_);
  plan_area_ = layout.plan;
  fetch_answers();
  fetch_growth();
  fetch_mends();
  const panels::Workspace work{session_, answers_, catalogs_,  look_,  state_,      storms_,
                               growth_,  rooms_,   proposals_, mends_, found_mends_};
  obey_keys(work, canvas_);
  panels::go_to_height(work);
  canvas::show(canvas_, session_, layout.plan, look_,
               [&](const session::View& view, ImDrawList& list) { draw_over_plan(view, list); });
  panels::show_tray(work, layout.tray);
  panels::show_right_side(work, layout.right);
  panels::show_top_row(work, layout.top);
  if (layout.has_side) panels::show_side_view(work, layout.side);
  panels::show_status_line(work, layout.plan, canvas_.pictures.being_read());
  panels::show_edges(layout, look_);
  panels::do_files(work, files_);
}

}  // namespace yardwright::window
