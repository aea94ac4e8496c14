// Seeks room for the next thing beside the window: where it can stand, why not elsewhere, its best spots. The newest
// question wins; what was found before is shown until its answer is back.
#pragma once

#include <chrono>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "editor/session/session.hpp"
#include "geom/grow/grow.hpp"

namespace yardwright::session {

/// What is sought room for, and in what yard.
struct GrowAsk {
  Site site;        ///< as of the phase
  Answers answers;  ///< its own
  Thing thing;
  int phase = 0;
  ItemId id;                ///< for the newcomer; it and all above it are free in every phase
  std::vector<Item> later;  ///< what the whole yard builds after the phase

  bool is_same(const GrowAsk& other) const;
};

/// What was found. It stays where it is in memory: the newcomer refers to its parts.
struct GrowRecord {
  GrowRecord(GrowAsk what, const Catalogs& shipped, const MendSearch& search);
  GrowRecord(const GrowRecord&) = delete;
  GrowRecord& operator=(const GrowRecord&) = delete;
  GrowRecord(GrowRecord&&) = delete;
  GrowRecord& operator=(GrowRecord&&) = delete;
  ~GrowRecord() = default;

  GrowAsk asked;
  Catalogs catalogs;                       ///< in force
  std::optional<grow::Newcomer> newcomer;  ///< of a thing that covers ground
  grow::Answer answer;
};

class GrowDesk {
 public:
  explicit GrowDesk(const Catalogs& shipped);

  /// One that waits is replaced by it; one that is being answered is answered first.
  void ask(GrowAsk what);
  /// Whether everything but the long mends is back within a time.
  bool wait(std::chrono::milliseconds at_most);
  /// Whether those mends are back as well.
  bool is_at_rest() const;
  /// The last one found; null before.
  std::shared_ptr<const GrowRecord> record() const;

 private:
  void work(const std::stop_token& stop);
  std::optional<GrowAsk> take_next(const std::stop_token& stop);
  bool keep(std::shared_ptr<const GrowRecord> found);

  const Catalogs& shipped_;
  mutable std::mutex lock_;
  std::condition_variable_any wake_, done_;
  std::optional<GrowAsk> newest_, waiting_;
  bool asking_ = false, seeking_ = false;
  std::stop_source mends_;
  std::shared_ptr<const GrowRecord> record_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

/// What the next thing is: the one in hand where it can stand, else the one that was chosen, else the usual next bin.
Thing thing_sought(const Session& session, const std::optional<Thing>& chosen);
/// The question of it, of the session's yard as of the phase that is shown; `answers` are of that yard.
GrowAsk grow_ask(const Session& session, const Answers& answers, const std::optional<Thing>& chosen);
/// Whether it is still that of the yard and of the thing that is sought.
bool is_of(const GrowRecord& record, const Session& session, const std::optional<Thing>& chosen);

/// One undoable step: the newcomer on a spot of its ground, or on several, with what fills it.
void place_newcomer(Session& session, const GrowRecord& record, const std::vector<SitePoint>& places);

}  // namespace yardwright::session
