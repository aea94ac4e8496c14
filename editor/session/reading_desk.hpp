// Reads a file beside the frames, so that a large one stops nothing: the newest reading wins, one that is cancelled or
// overtaken changes nothing, and what was read is taken into the session between two frames.
#pragma once

#include <functional>
#include <future>
#include <optional>
#include <string>

#include "editor/session/session.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

/// Puts what was read into the session.
using TakeIn = std::function<void(Session&)>;
/// Reads; runs on another thread and touches nothing that is shared.
using Reading = std::function<Expected<TakeIn>()>;

class ReadingDesk {
 public:
  void read(std::string name, Reading reading);
  void cancel();

  bool is_reading() const { return running_.valid(); }
  /// Of what is being read; empty where nothing is.
  const std::string& name() const { return name_; }
  /// Whether take() has something to give.
  bool is_done() const;
  /// What has been read, once; nothing while it is still being read.
  std::optional<Expected<TakeIn>> take();

 private:
  std::future<Expected<TakeIn>> running_;
  std::vector<std::future<Expected<TakeIn>>> left_;  ///< no longer wanted, and not yet at their end
  std::string name_;
};

}  // namespace yardwright::session
