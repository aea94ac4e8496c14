#include "editor/panels/proposal_card.hpp"

#include <fmt/format.h>

#include "editor/panels/field_row.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/session/brief_rows.hpp"
#include "geom/grow/proposal_words.hpp"
#include "geom/io/price_book.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

using session::ProposalAsk;
using session::ProposalRecord;

ProposalAsk ask_of(const Workspace& work) {
  if (work.state.proposal_ask) return *work.state.proposal_ask;
  return {session::usual_brief(work.session.site(), work.answers, work.catalogs.rules)};
}

void seek(const Workspace& work, const ProposalAsk& ask) {
  const session::Session& session = work.session;
  auto prices = session.file ? price_book_for(*session.file) : Expected<PriceBook>{shipped_price_book()};
  if (prices) return work.proposals.seek(session.site(), ask, *std::move(prices));
  work.session.notice = sentence(prices.error().front());
}

void show_brief(const Workspace& work, const ProposalAsk& ask) {
  for (const session::FieldRow& row : session::brief_rows(ask, work.units(), work.catalogs)) {
    const auto typed = field_row(work, row);
    if (!typed) continue;
    const auto changed = session::with_brief_row(ask, row.key, *typed, work.units());
    keep_refusal(work, row.key, changed ? nullptr : &changed.error());
    if (changed) work.state.proposal_ask = *changed;
  }
}

void show_progress(const Workspace& work) {
  const grow::SearchProgress progress = work.proposals.progress();
  if (progress.tried == 0)
    small_words(work, fmt::format("looking for free ground ... {:.0f} %", 100 * progress.ground_ratio));
  else
    small_words(work, fmt::format("{} layouts tried, {} pass; the most holds {}", progress.tried, progress.held,
                                  text_of(progress.most_stored_m3, Quantity::grain_volume, work.units())));
  if (progress.least_cost)
    small_words(work, "all that is wanted from " + number_text(*progress.least_cost, 0), palette::pass);
  if (pill("stop", work.look)) work.proposals.stop();
  hint("What was found by then is told.");
}

void show_proposal(const Workspace& work, const std::shared_ptr<const ProposalRecord>& record, std::size_t number,
                   bool fresh) {
  const grow::GrowthTask& task = *record->task;
  const grow::Proposal& one = record->found.list[number];
  words(fmt::format("{}  {} more", number + 1, text_of(one.measures.stored_m3, Quantity::grain_volume, work.units())),
        work.look.letters.strong, palette::ink);
  small_words(work, cost_words(task, one.measures), palette::ink);
  small_words(work, bins_words(task, one.layout));
  small_words(work, leg_words(task, one.layout));
  small_words(
      work, fmt::format("{} of spouts; least margin {}", text_of(one.measures.spouts_m, Quantity::length, work.units()),
                        safety_words(one.measures)));
  if (!one.meets) small_words(work, short_words(task, one), palette::caution);
  const bool shown = work.state.proposals_shown == record && work.state.proposal == number;
  if (pill(shown ? "hide" : "show", work.look)) {
    work.state.proposals_shown = record;
    work.state.proposal = shown ? std::nullopt : std::optional{number};
  }
  if (!fresh) return;
  ImGui::SameLine(0, work.look.px(8));
  if (pill("build it", work.look, number == 0)) {
    session::build_proposal(work.session, one);
    work.state.proposal.reset();
  }
  hint("All of it as one step, in a phase of its own; undo takes it back.");
}

void show_found(const Workspace& work, const std::shared_ptr<const ProposalRecord>& record) {
  const bool fresh = is_of(*record, work.session);
  const grow::Proposals& found = record->found;
  small_words(work, fmt::format("{} layouts tried, {} pass{}", found.progress.tried, found.progress.held,
                                record->whole ? "" : "; stopped before all were tried"));
  if (!fresh) small_words(work, "The yard has been changed since; seek again.", palette::caution);
  if (found.list.empty()) small_words(work, found.why_none, palette::fail);
  for (std::size_t i = 0; i < found.list.size(); ++i) {
    ImGui::PushID(static_cast<int>(i));
    ImGui::Dummy({0, work.look.px(4)});
    show_proposal(work, record, i, fresh);
    ImGui::PopID();
  }
  if (!found.list.empty()) small_words(work, "Prices: " + grow::book_words(record->task->book));
}

void show_parts(const Workspace& work) {
  const ProposalAsk ask = ask_of(work);
  show_brief(work, ask);
  if (work.proposals.is_seeking()) return show_progress(work);
  if (pill("seek proposals", work.look, true)) seek(work, ask);
  hint("Tries layouts beside your work, each against every question.");
  for (const Problem& problem : work.proposals.refusal()) small_words(work, sentence(problem), palette::fail);
  if (const auto record = work.proposals.record()) show_found(work, record);
}

}  // namespace

void show_proposal_card(const Workspace& work) {
  if (work.answers.pace == nullptr) return;
  ImGui::PushID("proposals");
  words("Proposals", work.look.letters.strong, palette::ink);
  small_words(work, "Whole layouts that break nothing and that no other beats.");
  show_parts(work);
  ImGui::Dummy({0, work.look.px(6)});
  ImGui::PopID();
}

}  // namespace yardwright::panels
