#include "geom/sheet/slope_arrows.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numbers>

#include "geom/ground/fall.hpp"
#include "geom/ground/graded_contours.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/sheet/paper_obstacle.hpp"

namespace yardwright {

namespace {

constexpr double spacing_mm = 34;
constexpr double arrow_mm = 8, head_mm = 1.9, letters_mm = 1.9;
constexpr double box_wide_mm = 9, box_high_mm = 4.4;  ///< of an arrow with its number over it
constexpr double shaft_down_mm = 1.2, words_up_mm = 0.75;
constexpr double most_across = 36;       ///< spacings over the lot: zoomed in far, they are no denser
constexpr double least_grade = 0.003;    ///< flatter than a grader holds (common practice, no source)
constexpr double bent_ratio = 0.12;      ///< of the fall over the arrow's length, that the ground may lie off its plane
constexpr double rough_ground_m = 0.02;  ///< which no arrow minds
constexpr double beside_middle_mm = 0.6;  ///< of a drive's arrow from the traffic along its middle

const Stroke shaft{palette::slope, 0.28, {}};

/// Along the paper, where y goes down.
DrawVector on_paper(SiteVector way) { return {way.x, -way.y}; }
/// Away from the feet of words that run along a direction.
DrawVector up_of(SiteVector way) {
  const double turn = turn_along_deg(way) * std::numbers::pi / 180;
  return {std::sin(turn), -std::cos(turn)};
}

class Arrows {
 public:
  Arrows(const Site& site, const DesignSurface& surface, const std::vector<Obstacle>& keep_off, double metres_per_mm)
      : surface_{surface}, metres_per_mm_{metres_per_mm}, lot_{site.lot.corners, {}} {
    for (const Obstacle& obstacle : keep_off) {
      const SitePath* path = std::get_if<SitePath>(&obstacle.shape);
      if (path == nullptr || !path->empty()) obstacles_.push_back(on_paper(obstacle, metres_per_mm));
    }
    const GridFrame& frame = surface.design.frame();
    over_ = site.lot.corners.empty() ? Box{frame.south_west, frame.south_west + SiteVector{frame.columns * frame.cell_m,
                                                                                           frame.rows * frame.cell_m}}
                                     : box_of(site.lot.corners);
    const double longest_m = std::max(over_.high.x - over_.low.x, over_.high.y - over_.low.y);
    spacing_m_ = std::max(spacing_mm * metres_per_mm, longest_m / most_across);
  }

  void along(const Drive& drive) {
    const SitePath path = with_fillets(drive.path, drive.corner_radius_m, surface_.design.frame().cell_m);
    const double total_m = length(path), half_m = arrow_mm / 2 * metres_per_mm_;
    const int count = std::max(1, static_cast<int>(total_m / spacing_m_));
    if (total_m < 2 * half_m || drive.width_m < 2 * beside_middle_mm * metres_per_mm_) return;
    for (int i = 0; i < count; ++i) {
      // Not where its own traffic's arrows are.
      const double station_m = total_m * (i + 0.4) / count;
      const SitePoint before = pose_at(path, station_m - half_m).at, after = pose_at(path, station_m + half_m).at;
      add_on_drive(pose_at(path, station_m), before, after);
    }
  }

  /// For what is put on the ground after it.
  void keep_off(const Drive& drive) {
    for (const Polygon& part : strip(drive.path, drive.width_m))
      obstacles_.push_back(on_paper(Obstacle{part.outer, 1, true, 0, {}}, metres_per_mm_));
  }

  void over_ground(double spacing_ratio, bool graded_only) {
    const double step_m = spacing_m_ * spacing_ratio;
    const int columns = static_cast<int>((over_.high.x - over_.low.x) / step_m) + 1,
              rows = static_cast<int>((over_.high.y - over_.low.y) / step_m) + 1;
    for (int row = 0; row < rows; ++row) {
      for (int column = 0; column < columns; ++column) {
        const double shift = row % 2 == 0 ? 0.25 : 0.75;
        near({over_.low.x + (column + shift) * step_m, over_.low.y + (row + 0.5) * step_m}, step_m, graded_only);
      }
    }
  }

  std::vector<SlopeArrow> take() { return std::move(arrows_); }

 private:
  LabelBox box_at(SitePoint at, SiteVector downhill) const {
    return label_box(on_paper(at, metres_per_mm_), box_wide_mm, box_high_mm, turn_along_deg(downhill));
  }

  bool is_free(const LabelBox& box) const {
    return std::ranges::none_of(obstacles_, [&](const PaperObstacle& obstacle) {
      return is_near(box, obstacle) && (crosses_edge(box, obstacle) || (obstacle.solid && lies_in(box, obstacle)));
    });
  }

  bool is_within(const LabelBox& box) const {
    if (lot_.outer.empty()) return true;
    return std::ranges::all_of(box.corners(), [&](PaperPoint corner) {
      return contains(lot_, {corner.x * metres_per_mm_, -corner.y * metres_per_mm_});
    });
  }

  bool is_apart(SitePoint at, double least_m) const {
    return std::ranges::none_of(arrows_, [&](const SlopeArrow& other) { return distance(other.at, at) < least_m; });
  }

  bool add(const SlopeArrow& arrow, double apart_m) {
    const LabelBox box = box_at(arrow.at, arrow.downhill);
    if (arrow.grade_ratio < least_grade || !is_apart(arrow.at, apart_m) || !is_within(box) || !is_free(box))
      return false;
    arrows_.push_back(arrow);
    return true;
  }

  void add_on_drive(const Pose& middle, SitePoint before, SitePoint after) {
    const double run_m = distance(before, after);
    const double rise_m = surface_.level_m(after) - surface_.level_m(before);
    if (!(run_m > 0)) return;
    const SiteVector along = direction(middle.facing), downhill = rise_m > 0 ? -along : along;
    const DrawVector up = up_of(downhill) * ((box_high_mm / 2 + beside_middle_mm) * metres_per_mm_);
    add({middle.at + SiteVector{up.x, -up.y}, downhill, std::abs(rise_m) / run_m}, spacing_m_ * 0.5);
  }

  bool is_graded(SitePoint at) const {
    return std::abs(surface_.level_m(at) - surface_.existing_level_m(at)) >= graded_m;
  }

  std::optional<SlopeArrow> arrow_at(SitePoint at) const {
    const double radius_m = std::max(arrow_mm / 2 * metres_per_mm_, 2 * surface_.design.frame().cell_m);
    const auto fall = fall_at(surface_.design, at, radius_m);
    if (!fall || fall->rough_m > rough_ground_m + bent_ratio * fall->grade_ratio * radius_m) return std::nullopt;
    return SlopeArrow{at, fall->downhill, fall->grade_ratio};
  }

  /// At the place or the nearest free one around it.
  void near(SitePoint wanted, double step_m, bool graded_only) {
    static constexpr std::array tries{
        SiteVector{0, 0},      SiteVector{0.15, 0},   SiteVector{-0.15, 0},  SiteVector{0, 0.15}, SiteVector{0, -0.15},
        SiteVector{0.3, 0},    SiteVector{-0.3, 0},   SiteVector{0, 0.3},    SiteVector{0, -0.3}, SiteVector{0.3, 0.3},
        SiteVector{-0.3, 0.3}, SiteVector{0.3, -0.3}, SiteVector{-0.3, -0.3}};
    for (const SiteVector& off : tries) {
      const SitePoint at = wanted + off * step_m;
      if (graded_only && !is_graded(at)) continue;
      const auto arrow = arrow_at(at);
      if (arrow && add(*arrow, step_m * 0.72)) return;
    }
  }

  const DesignSurface& surface_;
  double metres_per_mm_;
  Polygon lot_;
  Box over_;
  double spacing_m_ = 1;
  std::vector<PaperObstacle> obstacles_;
  std::vector<SlopeArrow> arrows_;
};

/// From tail to tip along a direction on the paper, around its middle.
SymbolMarks arrow_marks(DrawPoint middle, DrawVector ahead) {
  const DrawVector aside{-ahead.y, ahead.x};
  const DrawPoint tip = middle + ahead * (arrow_mm / 2), foot = tip - ahead * head_mm;
  return {LineMark{{middle - ahead * (arrow_mm / 2), foot}, shaft, false},
          AreaMark{{{tip, foot + aside * (head_mm * 0.36), foot - aside * (head_mm * 0.36)}}, palette::slope}};
}

void add_arrow(PlanParts& parts, const SlopeArrow& arrow, double metres_per_mm) {
  const DrawVector up = up_of(arrow.downhill);
  parts.shapes.push_back(
      SymbolMark{on_plan(arrow.at), arrow_marks(DrawPoint{} - up * shaft_down_mm, on_paper(arrow.downhill))});
  TextMark text = words(arrow.at, slope_words(arrow.grade_ratio), letters_mm, palette::slope);
  text.turn_deg = turn_along_deg(arrow.downhill);
  text.offset_mm = up * words_up_mm;
  parts.shapes.push_back(std::move(text));
  constexpr double over_arrow = 15;
  SitePath around;
  const LabelBox box = label_box({}, box_wide_mm, box_high_mm, text.turn_deg);
  for (const PaperPoint corner : box.corners())
    around.push_back(arrow.at + SiteVector{corner.x, -corner.y} * metres_per_mm);
  parts.obstacles.push_back({std::move(around), over_arrow, true, 0, {}});
}

std::vector<Drive> graded_drives(const Site& site) {
  std::vector<Drive> drives;
  for (const Item& item : site.items) {
    const Drive* drive = as<Drive>(item);
    if (drive != nullptr && drive->is_graded() && length(drive->path) > 0) drives.push_back(*drive);
  }
  return drives;
}

}  // namespace

std::vector<SlopeArrow> slope_arrows(const Site& site, const DesignSurface& surface,
                                     const std::vector<Obstacle>& keep_off, double metres_per_mm) {
  if (!surface.known()) return {};
  Arrows arrows{site, surface, keep_off, metres_per_mm};
  const std::vector<Drive> drives = graded_drives(site);
  for (const Drive& drive : drives) arrows.along(drive);
  for (const Drive& drive : drives) arrows.keep_off(drive);
  if (!surface.existing.same_data(surface.design)) arrows.over_ground(0.5, true);
  arrows.over_ground(1, false);
  return arrows.take();
}

PlanParts slope_arrow_parts(const std::vector<SlopeArrow>& arrows, double metres_per_mm) {
  PlanParts parts;
  for (const SlopeArrow& arrow : arrows) add_arrow(parts, arrow, metres_per_mm);
  return parts;
}

std::string slope_words(double grade_ratio) {
  const double percent = 100 * grade_ratio;
  return fmt::format("{:.{}f}%", percent, percent < 9.95 ? 1 : 0);
}

SymbolMarks slope_arrow_sample() { return arrow_marks({3, 0}, {0.8, 0}); }

}  // namespace yardwright
