#include "editor/session/answer_desk.hpp"

#include "geom/check/reads.hpp"

namespace yardwright::session {

AnswerDesk::AnswerDesk(const Catalogs& catalogs)
    : live_{catalogs}, worker_{[this](const std::stop_token& stop) { work(stop); }} {}

void AnswerDesk::ask(const Site& site) {
  const std::scoped_lock held{lock_};
  if (newest_ && *newest_ == site) return;
  for (const Question question : every_question) {
    reads_waiting_[static_cast<std::size_t>(question)] |=
        !newest_ || read_by(question, *newest_) != read_by(question, site);
  }
  newest_ = site;
  waiting_ = site;
  mends_.request_stop();
  wake_.notify_all();
}

bool AnswerDesk::wait(std::chrono::milliseconds at_most) {
  std::unique_lock held{lock_};
  return done_.wait_for(held, at_most, [this] { return !asking_ && !waiting_; });
}

bool AnswerDesk::is_at_rest() const {
  const std::scoped_lock held{lock_};
  return !asking_ && !seeking_ && !waiting_;
}

Answers AnswerDesk::answers() const {
  Answers answers = live_.answers();
  const std::scoped_lock held{lock_};
  if (!waiting_) return answers;
  for (std::size_t i = 0; i < reads_waiting_.size(); ++i) answers.stale[i] = answers.stale[i] || reads_waiting_[i];
  return answers;
}

/// Waits for a site to ask of; nothing at the end.
std::optional<Site> AnswerDesk::take_next(const std::stop_token& stop) {
  std::unique_lock held{lock_};
  if (!wake_.wait(held, stop, [this] { return waiting_.has_value(); })) return std::nullopt;
  std::optional<Site> next = std::exchange(waiting_, std::nullopt);
  reads_waiting_ = {};
  mends_ = std::stop_source{};
  asking_ = true;
  return next;
}

void AnswerDesk::work(const std::stop_token& stop) {
  while (const auto site = take_next(stop)) {
    live_.ask(*site);
    std::stop_token mends_stop;
    {
      const std::scoped_lock held{lock_};
      asking_ = false;
      seeking_ = !waiting_;
      mends_stop = mends_.get_token();
    }
    done_.notify_all();
    const std::stop_callback at_end{stop, [this] { mends_.request_stop(); }};
    live_.seek_mends(mends_stop);
    const std::scoped_lock held{lock_};
    seeking_ = false;
  }
}

}  // namespace yardwright::session
