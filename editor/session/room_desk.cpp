#include "editor/session/room_desk.hpp"

#include <utility>

namespace yardwright::session {

namespace {

constexpr int leg_steps = 4;

bool takes_spout(const GrowRecord& of) { return grow::is_filled_by_spout(of.asked.thing); }

std::vector<ItemId> legs_of(const Site& site) {
  std::vector<ItemId> legs;
  for_each<Leg>(site, [&](const Item& item, const Leg&) { legs.push_back(item.id); });
  return legs;
}

}  // namespace

void RoomDesk::count(std::shared_ptr<const GrowRecord> of) {
  if (worker_.joinable()) {
    worker_.request_stop();
    worker_.join();
  }
  if (!of->newcomer) return;
  {
    const std::scoped_lock held{lock_};
    record_.reset();
  }
  found_ = 0;
  counting_ = true;
  worker_ = std::jthread{[this, of = std::move(of)](const std::stop_token& stop) { work(stop, of); }};
}

std::shared_ptr<const RoomRecord> RoomDesk::record() const {
  const std::scoped_lock held{lock_};
  return record_;
}

void RoomDesk::keep(RoomRecord record) {
  const std::scoped_lock held{lock_};
  record_ = std::make_shared<const RoomRecord>(std::move(record));
  ++kept_;
}

void RoomDesk::work(const std::stop_token& stop, const std::shared_ptr<const GrowRecord>& of) {
  grow::PackingEffort effort;
  effort.stop = stop;
  effort.found = [this](std::size_t places) { found_ = static_cast<int>(places); };
  RoomRecord record{of, grow::room_for(*of->newcomer, of->answer.region, effort), {}, !stop.stop_requested()};
  keep(record);
  if (takes_spout(*of)) {
    for (const ItemId leg : legs_of(of->asked.site)) {
      if (stop.stop_requested()) break;
      record.taller.push_back({leg, grow::at_heights(*of->newcomer, leg, leg_steps, stop)});
      keep(record);
    }
  }
  counting_ = false;
}

}  // namespace yardwright::session
