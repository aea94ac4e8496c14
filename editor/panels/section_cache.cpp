#include "editor/panels/section_cache.hpp"

#include "geom/drain/storm/water_here.hpp"

namespace yardwright::panels {

void SectionCache::cut(const session::ShownLine& line, const session::Session& session, const DesignSurface& surface) {
  const bool same_yard = revision_ == session.history.revision() && phase_ == session.phase;
  if (same_yard && line == line_ && surface.design.same_data(surface_.design)) return;
  if (!same_yard) site_ = as_of(session.site(), session.phase);
  revision_ = session.history.revision();
  phase_ = session.phase;
  line_ = line;
  surface_ = surface;
  view_ = section_view(site_, surface_, line_.path, line_.along);
  is_new_ = true;
}

void SectionCache::keep_storm_ground(const std::shared_ptr<const session::StormRecord>& record) {
  if (record == record_) return;
  record_ = record;
  storm_ground_ = record == nullptr ? LevelGrid{} : design_surface(record->site).design;
}

void SectionCache::wet(const std::shared_ptr<const session::StormRecord>& record, double time_s) {
  if (!is_new_ && record == record_ && time_s == time_s_) return;
  keep_storm_ground(record);
  storm_of_before_ = record != nullptr && !session::is_of(*record, site_);
  is_new_ = false;
  time_s_ = time_s;
  view_.water.clear();
  view_.deepest.clear();
  view_.pits.clear();
  view_.pipes.clear();
  if (record == nullptr) return;
  const auto& story = record->story;
  view_.deepest = deepest_water(view_.ground, storm_ground_, story);
  view_.pits = pit_water_at(story, time_s);
  const auto* frame = story.frames.empty() ? nullptr : &story.frames[drain::storm::frame_at(story, time_s)];
  view_.pipes = pipe_water_at(record->site, storm_ground_, story, frame, time_s);
  if (frame != nullptr) view_.water = water_of(view_.ground, storm_ground_, *frame);
}

}  // namespace yardwright::panels
