// Counts beside the window how many more of a thing fit at once, and then what taller legs would gain: it goes on until it
// is stopped or done, and what was found by then stands.
#pragma once

#include <atomic>

#include "editor/session/grow_desk.hpp"
#include "geom/grow/leg_heights.hpp"
#include "geom/grow/room.hpp"

namespace yardwright::session {

struct TallerLeg {
  ItemId leg;
  std::vector<grow::AtHeight> heights;  ///< as it is, and raised step by step
};

struct RoomRecord {
  std::shared_ptr<const GrowRecord> of;
  grow::Room room;
  std::vector<TallerLeg> taller;  ///< as far as it has come
  bool whole = false;             ///< not stopped on the way
};

class RoomDesk {
 public:
  /// Ends the count in hand.
  void count(std::shared_ptr<const GrowRecord> of);
  void stop() { worker_.request_stop(); }

  bool is_counting() const { return counting_; }
  /// So far.
  int found() const { return found_; }
  /// Another number whenever there is something new to show.
  int news() const { return kept_ * 1000 + (counting_ ? 1 + found_ : 0); }
  /// The last one; null before, and while none of the count in hand is kept.
  std::shared_ptr<const RoomRecord> record() const;

 private:
  void work(const std::stop_token& stop, const std::shared_ptr<const GrowRecord>& of);
  void keep(RoomRecord record);

  std::atomic<bool> counting_ = false;
  std::atomic<int> found_ = 0, kept_ = 0;
  mutable std::mutex lock_;
  std::shared_ptr<const RoomRecord> record_;
  std::jthread worker_;  ///< last, so that it ends before the rest does
};

}  // namespace yardwright::session
