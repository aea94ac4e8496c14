// The section that the side view shows, kept between frames: cut anew when the line, the ground or the yard changes, its
// water when the storm or its moment does.
#pragma once

#include "editor/session/shown_line.hpp"
#include "editor/session/storm_desk.hpp"
#include "geom/sheet/section_drawing.hpp"

namespace yardwright::panels {

class SectionCache {
 public:
  void cut(const session::ShownLine& line, const session::Session& session, const DesignSurface& surface);
  /// Of a storm at a moment; without a record the section is dry.
  void wet(const std::shared_ptr<const session::StormRecord>& record, double time_s);

  const SectionView& view() const { return view_; }
  /// Whether the storm ran over another yard than this one.
  bool is_storm_of_before() const { return storm_of_before_; }

 private:
  void keep_storm_ground(const std::shared_ptr<const session::StormRecord>& record);

  session::ShownLine line_;
  std::uint64_t revision_ = 0;
  int phase_ = -1;
  Site site_;  ///< as of the phase
  DesignSurface surface_;
  SectionView view_;
  bool is_new_ = false;  ///< cut since its water was put in

  std::shared_ptr<const session::StormRecord> record_;
  LevelGrid storm_ground_;
  double time_s_ = -1;
  bool storm_of_before_ = false;
};

}  // namespace yardwright::panels
