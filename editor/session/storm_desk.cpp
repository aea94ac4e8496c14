#include "editor/session/storm_desk.hpp"

#include <new>

#include "geom/check/reads.hpp"
#include "geom/drain/storm/how_often.hpp"
#include "geom/drain/storm/storm_findings.hpp"
#include "geom/ground/design_surface.hpp"

namespace yardwright::session {

void StormDesk::run(const Site& site, const drain::storm::StormOptions& options, StormAsk ask) {
  if (worker_.joinable()) {
    worker_.request_stop();
    worker_.join();
  }
  running_ = true;
  done_ratio_ = 0;
  worker_ = std::jthread{[this, site, options, ask](const std::stop_token& token) { work(token, site, options, ask); }};
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

void StormDesk::tell(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options,
                     StormAsk ask) {
  const DesignSurface surface = design_surface(site);
  const double own_part = ask == StormAsk::how_often ? 1.0 / static_cast<double>(site.storm.table.rows.size() + 1) : 1;
  auto story = drain::storm::run_storm(site, surface, catalogs_, options, [&](double ratio) {
    done_ratio_ = own_part * ratio;
    return !stop.stop_requested();
  });
  Findings findings = story ? judge_storm(site, *story, catalogs_.rules.with(site.rule_overrides)) : Findings{};
  Problems refusal = story ? Problems{} : story.error();
  if (story && ask == StormAsk::how_often) {
    const auto found = how_often(site, surface, catalogs_, options, [&](double ratio) {
      done_ratio_ = own_part + (1 - own_part) * ratio;
      return !stop.stop_requested();
    });
    if (found)
      tell_how_often(findings, *found, site.storm.yard_life_years);
    else
      refusal = found.error();
  }
  const std::scoped_lock held{lock_};
  refusal_ = std::move(refusal);
  if (story)
    record_ = std::make_shared<const StormRecord>(StormRecord{site, options, std::move(*story), std::move(findings)});
}

/// A yard too large for the machine ends the storm, not the program.
void StormDesk::work(const std::stop_token& stop, const Site& site, const drain::storm::StormOptions& options,
                     StormAsk ask) {
  try {
    tell(stop, site, options, ask);
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
