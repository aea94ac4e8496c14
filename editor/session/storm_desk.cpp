#include "editor/session/storm_desk.hpp"

#include <new>

#include "geom/check/reads.hpp"
#include "geom/drain/storm/storm_findings.hpp"
#include "geom/ground/design_surface.hpp"

namespace yardwright::session {

void StormDesk::run(const Site& site, const drain::storm::StormOptions& options) {
  if (worker_.joinable()) {
    worker_.request_stop();
    worker_.join();
  }
  running_ = true;
  done_ratio_ = 0;
  worker_ = std::jthread{[this, site, options](const std::stop_token& token) { work(token, site, options); }};
}

void StormDesk::stop() { worker_.request_stop(); }

std::shared_ptr<const StormRecord> StormDesk::record() const {
  const std::scoped_lock held{lock_};
  return record_;
}

Problems StormDesk::refusal() const {
  const std::scoped_lock held{lock_};
  return refusal_;
}

void StormDesk::tell(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options) {
  auto story = drain::storm::run_storm(site, design_surface(site), catalogs_, options, [&](double ratio) {
    done_ratio_ = ratio;
    return !stop.stop_requested();
  });
  Findings findings = story ? judge_storm(site, *story, catalogs_.rules.with(site.rule_overrides)) : Findings{};
  const std::scoped_lock held{lock_};
  refusal_ = story ? Problems{} : story.error();
  if (story)
    record_ = std::make_shared<const StormRecord>(StormRecord{site, options, std::move(*story), std::move(findings)});
}

/// A yard too large for the machine ends the storm, not the program.
void StormDesk::work(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options) {
  try {
    tell(stop, site, options);
  } catch (const std::bad_alloc&) {
    const std::scoped_lock held{lock_};
    refusal_ = {{"the storm needs more memory than there is", "the storm of " + site.name,
                 "use larger cells, or a smaller piece of ground"}};
  }
  ++ended_;
  running_ = false;
}

bool is_of(const StormRecord& record, const Site& site) {
  return read_by(Question::drain, record.site) == read_by(Question::drain, site);
}

}  // namespace yardwright::session
