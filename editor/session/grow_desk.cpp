#include "editor/session/grow_desk.hpp"

#include <utility>

#include "geom/grow/prover.hpp"
#include "geom/grow/room.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

bool can_stand(const Thing& thing) { return footprint(thing) && path_of(thing) == nullptr; }

/// Where it lies says nothing of what is sought.
Thing at_origin(const Thing& thing) { return moved(thing, SitePoint{} - place_of(thing)); }

}  // namespace

bool GrowAsk::is_same(const GrowAsk& other) const {
  return phase == other.phase && thing == other.thing && later == other.later && site == other.site;
}

GrowRecord::GrowRecord(GrowAsk what, const Catalogs& shipped, const MendSearch& search)
    : asked{std::move(what)},
      catalogs{grow::in_force(asked.site, shipped)},
      newcomer{grow::newcomer(asked.site, asked.answers, catalogs.rules, asked.thing, asked.phase)},
      answer{grow::ask(asked.site, asked.answers, catalogs, &asked.thing, search, asked.later)} {
  if (newcomer) newcomer->item.id = asked.id;
}

GrowDesk::GrowDesk(const Catalogs& shipped)
    : shipped_{shipped}, worker_{[this](const std::stop_token& stop) { work(stop); }} {}

void GrowDesk::ask(GrowAsk what) {
  const std::scoped_lock held{lock_};
  if (newest_ && newest_->is_same(what)) return;
  newest_ = what;
  waiting_ = std::move(what);
  mends_.request_stop();
  wake_.notify_all();
}

bool GrowDesk::wait(std::chrono::milliseconds at_most) {
  std::unique_lock held{lock_};
  return done_.wait_for(held, at_most, [this] { return !asking_ && !waiting_; });
}

bool GrowDesk::is_at_rest() const {
  const std::scoped_lock held{lock_};
  return !asking_ && !seeking_ && !waiting_;
}

std::shared_ptr<const GrowRecord> GrowDesk::record() const {
  const std::scoped_lock held{lock_};
  return record_;
}

std::optional<GrowAsk> GrowDesk::take_next(const std::stop_token& stop) {
  std::unique_lock held{lock_};
  if (!wake_.wait(held, stop, [this] { return waiting_.has_value(); })) return std::nullopt;
  mends_ = std::stop_source{};
  asking_ = true;
  return std::exchange(waiting_, std::nullopt);
}

/// Gives whether its long mends are to be sought.
bool GrowDesk::keep(std::shared_ptr<const GrowRecord> found) {
  const std::scoped_lock held{lock_};
  record_ = std::move(found);
  asking_ = false;
  seeking_ = !record_->answer.mends_sought && !waiting_;
  done_.notify_all();
  return seeking_;
}

void GrowDesk::work(const std::stop_token& stop) {
  while (auto next = take_next(stop)) {
    if (!keep(std::make_shared<const GrowRecord>(*next, shipped_, MendSearch{false}))) continue;
    const std::stop_callback at_end{stop, [this] { mends_.request_stop(); }};
    const std::stop_token mends_stop = mends_.get_token();
    auto mended = std::make_shared<const GrowRecord>(*std::move(next), shipped_, MendSearch{true, mends_stop});
    const std::scoped_lock held{lock_};
    if (!mends_stop.stop_requested()) record_ = std::move(mended);
    seeking_ = false;
  }
}

Thing thing_sought(const Session& session, const std::optional<Thing>& chosen) {
  const Tool& tool = session.tool;
  if (tool.doing == Doing::place && tool.thing && can_stand(*tool.thing)) return at_origin(*tool.thing);
  return at_origin(chosen ? *chosen : grow::next_bin(as_of(session.site(), session.phase)));
}

GrowAsk grow_ask(const Session& session, const Answers& answers, const std::optional<Thing>& chosen) {
  return {as_of(session.site(), session.phase),
          answers,
          thing_sought(session, chosen),
          session.phase,
          next_id(session.site()),
          grow::built_after(session.site(), session.phase)};
}

bool is_of(const GrowRecord& record, const Session& session, const std::optional<Thing>& chosen) {
  return record.asked.phase == session.phase && record.asked.thing == thing_sought(session, chosen) &&
         record.asked.later == grow::built_after(session.site(), session.phase) &&
         record.asked.site == as_of(session.site(), session.phase);
}

void place_newcomer(Session& session, const GrowRecord& record, const std::vector<SitePoint>& places) {
  grow::Newcomer newcomer = *record.newcomer;
  newcomer.item.id = next_id(session.site());
  perform(session, grow::built_at(newcomer, places));
  select_nothing(session);
  select(session, newcomer.item.id);
}

}  // namespace yardwright::session
