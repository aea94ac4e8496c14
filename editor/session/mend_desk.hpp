// Seeks beside the window, for what fails or wants caution in the question that is shown, the least change that mends it and
// breaks nothing that passed; takes from a tenth of a second to some seconds a finding, and keeps what it has found.
#pragma once

#include <atomic>
#include <condition_variable>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "editor/session/session.hpp"
#include "geom/grow/least_change.hpp"

namespace yardwright::session {

/// What was found for one yard, as far as it has come.
struct MendRecord {
  Site site;
  std::map<std::string, grow::Found> found;  ///< by the finding's id
};

class MendDesk {
 public:
  explicit MendDesk(const Catalogs& shipped);

  /// `answers` are of the site and hold their own mends. Another yard or question ends the search in hand.
  void ask(const Site& site, const Answers& answers, Question question);

  bool is_seeking() const { return seeking_; }
  /// Another number whenever there is something new to show.
  int news() const { return news_; }
  /// Null before the first.
  std::shared_ptr<const MendRecord> record() const;

 private:
  struct Asked {
    Site site;
    Answers answers;
    Question question;
  };
  void work(const std::stop_token& stop);
  void seek(const Asked& asked, const std::stop_token& stop);
  std::optional<Asked> take_next(const std::stop_token& stop);
  MendRecord begun(const Site& site) const;
  void keep(const MendRecord& record, const std::stop_token& stop);

  const Catalogs& shipped_;
  std::atomic<bool> seeking_ = false;
  std::atomic<int> news_ = 0;
  mutable std::mutex lock_;
  std::condition_variable_any wake_;
  std::uint64_t newest_revision_ = 0;  ///< of the answers handed in last
  Question newest_question_ = Question::reach;
  std::optional<Asked> waiting_;
  std::stop_source in_hand_;
  std::shared_ptr<const MendRecord> record_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

/// One undoable step; of a change that was found in the yard as of the phase that is shown.
void take_change(Session& session, const grow::Change& change);

}  // namespace yardwright::session
