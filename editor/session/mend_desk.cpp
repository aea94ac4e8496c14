#include "editor/session/mend_desk.hpp"

#include <utility>

namespace yardwright::session {

namespace {

/// Room to grow is not mended: its own mends are leg heights and outlets, which are proven as they are found.
bool is_sought(const Finding& finding) { return grow::wants_change(finding) && finding.question != Question::grow; }

}  // namespace

MendDesk::MendDesk(const Catalogs& shipped)
    : shipped_{shipped}, worker_{[this](const std::stop_token& stop) { work(stop); }} {}

void MendDesk::ask(const Site& site, const Answers& answers, Question question) {
  const std::scoped_lock held{lock_};
  if (newest_revision_ == answers.revision && newest_question_ == question) return;
  newest_revision_ = answers.revision;
  newest_question_ = question;
  waiting_ = Asked{site, answers, question};
  seeking_ = true;
  in_hand_.request_stop();
  wake_.notify_all();
}

std::shared_ptr<const MendRecord> MendDesk::record() const {
  const std::scoped_lock held{lock_};
  return record_;
}

std::optional<MendDesk::Asked> MendDesk::take_next(const std::stop_token& stop) {
  std::unique_lock held{lock_};
  if (!wake_.wait(held, stop, [this] { return waiting_.has_value(); })) return std::nullopt;
  in_hand_ = std::stop_source{};
  return std::exchange(waiting_, std::nullopt);
}

/// What is known of the same yard stays known when another question is shown.
MendRecord MendDesk::begun(const Site& site) const {
  const std::scoped_lock held{lock_};
  return record_ != nullptr && record_->site == site ? *record_ : MendRecord{site, {}};
}

/// What was cut short says nothing of what there is.
void MendDesk::keep(const MendRecord& record, const std::stop_token& stop) {
  const std::scoped_lock held{lock_};
  if (stop.stop_requested()) return;
  record_ = std::make_shared<const MendRecord>(record);
  ++news_;
}

void MendDesk::seek(const Asked& asked, const std::stop_token& stop) {
  MendRecord record = begun(asked.site);
  keep(record, stop);
  grow::LeastChanges changes{asked.site, asked.answers, shipped_};
  for (const Finding& finding : findings_of(asked.answers, asked.question)) {
    if (stop.stop_requested()) return;
    if (!is_sought(finding) || record.found.contains(finding.id)) continue;
    record.found[finding.id] = changes.of(finding, stop);
    keep(record, stop);
  }
}

void MendDesk::work(const std::stop_token& stop) {
  while (const auto next = take_next(stop)) {
    const std::stop_callback at_end{stop, [this] {
                                      const std::scoped_lock held{lock_};
                                      in_hand_.request_stop();
                                    }};
    const std::stop_token token = [this] {
      const std::scoped_lock held{lock_};
      return in_hand_.get_token();
    }();
    seek(*next, token);
    const std::scoped_lock held{lock_};
    seeking_ = waiting_.has_value();
    ++news_;
  }
}

void take_change(Session& session, const grow::Change& change) {
  Mend whole;
  whole.edits = change.edits();
  take_mend(session, whole);
}

}  // namespace yardwright::session
