#include "editor/session/reading_desk.hpp"

namespace yardwright::session {

namespace {

bool is_ready(const std::future<Expected<TakeIn>>& one) {
  return one.wait_for(std::chrono::seconds{0}) == std::future_status::ready;
}

}  // namespace

void ReadingDesk::read(std::string name, Reading reading) {
  cancel();
  name_ = std::move(name);
  running_ = std::async(std::launch::async, std::move(reading));
}

void ReadingDesk::cancel() {
  std::erase_if(left_, is_ready);
  if (running_.valid()) left_.push_back(std::move(running_));
  name_.clear();
}

bool ReadingDesk::is_done() const { return running_.valid() && is_ready(running_); }

std::optional<Expected<TakeIn>> ReadingDesk::take() {
  std::erase_if(left_, is_ready);
  if (!is_done()) return std::nullopt;
  name_.clear();
  return running_.get();
}

}  // namespace yardwright::session
