#include "editor/session/proposal_desk.hpp"

#include <utility>

namespace yardwright::session {

void ProposalDesk::seek(Site whole, ProposalAsk ask, PriceBook prices) {
  if (worker_.joinable()) {
    worker_.request_stop();
    worker_.join();
  }
  {
    const std::scoped_lock held{lock_};
    record_.reset();
    refusal_.clear();
    progress_ = {};
  }
  seeking_ = true;
  worker_ = std::jthread{[this, whole = std::move(whole), ask = std::move(ask),
                          prices = std::move(prices)](const std::stop_token& stop) { work(stop, whole, ask, prices); }};
}

grow::SearchProgress ProposalDesk::progress() const {
  const std::scoped_lock held{lock_};
  return progress_;
}

std::shared_ptr<const ProposalRecord> ProposalDesk::record() const {
  const std::scoped_lock held{lock_};
  return record_;
}

Problems ProposalDesk::refusal() const {
  const std::scoped_lock held{lock_};
  return refusal_;
}

void ProposalDesk::tell(const grow::SearchProgress& progress) {
  const std::scoped_lock held{lock_};
  progress_ = progress;
  ++news_;
}

void ProposalDesk::work(const std::stop_token& stop, Site whole, const ProposalAsk& ask, PriceBook prices) {
  auto record = std::make_shared<ProposalRecord>();
  record->task = std::make_unique<grow::GrowthTask>(std::move(whole), ask.brief, std::move(prices), shipped_);
  Problems faults = faults_of(*record->task);
  if (faults.empty()) {
    grow::ProposalEffort effort;
    effort.search = {ask.seed, ask.tries, stop, [this](const grow::SearchProgress& progress) { tell(progress); }};
    record->found = propose(*record->task, effort);
    record->whole = !stop.stop_requested();
  }
  const std::scoped_lock held{lock_};
  if (faults.empty()) record_ = std::move(record);
  refusal_ = std::move(faults);
  seeking_ = false;
  ++news_;
}

bool is_of(const ProposalRecord& record, const Session& session) { return record.task->whole == session.site(); }

void build_proposal(Session& session, const grow::Proposal& proposal) {
  perform(session, proposal.edits);
  session.phase = static_cast<int>(session.site().phases.size()) - 1;
  select_nothing(session);
  session.notice = proposal.name + " is built in a phase of its own; undo takes all of it back.";
}

}  // namespace yardwright::session
