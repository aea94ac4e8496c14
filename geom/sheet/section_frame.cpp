#include "geom/sheet/section_frame.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "geom/sheet/letter_widths.hpp"

namespace yardwright {

namespace {

constexpr double left_mm = 3, right_mm = 15, top_mm = 1.5, bottom_mm = 5;
constexpr double gap_mm = 2.5;  // between two names
constexpr double shared_pole_mm = 2;
constexpr int most_rows = 4;
constexpr double least_relief_m = 0.5;
constexpr double below_ratio = 0.3;    // of the room to spare
constexpr double margin_ratio = 0.08;  // of the relief, above and below
constexpr std::array exaggerations{1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 20.0};

struct Levels {
  double low_m = 1e9, high_m = -1e9;
  void take(double level_m) {
    low_m = std::min(low_m, level_m);
    high_m = std::max(high_m, level_m);
  }
};

void take_water(Levels& levels, const drain::storm::WaterLevels& water) {
  for (const auto& level_m : water)
    if (level_m) levels.take(*level_m);
}

/// Of the ground, its water and what lies in it; walls and towers may be cut off.
Levels levels_shown(const SectionView& view) {
  Levels levels;
  for (const SectionPoint& point : view.ground.points) {
    if (!point.levels) continue;
    levels.take(point.levels->existing_m);
    levels.take(point.levels->design_m);
    if (shows_groundwater(view)) levels.take(point.levels->existing_m - view.groundwater_depth_m);
  }
  if (levels.low_m > levels.high_m) return levels;
  take_water(levels, view.water);
  take_water(levels, view.deepest);
  for (const LineCrossing& crossing : view.crossings) {
    if (!crossing.is_below || !crossing.at_from) continue;
    for (const LevelRange& range : {*crossing.at_from, *crossing.at_to}) {
      levels.take(range.base_m);
      levels.take(range.top_m);
    }
  }
  const double lacking_m = std::max(0.0, least_relief_m - (levels.high_m - levels.low_m));
  const double margin_m = (levels.high_m - levels.low_m + lacking_m) * margin_ratio;
  return {levels.low_m - margin_m - lacking_m / 2, levels.high_m + margin_m + lacking_m / 2};
}

bool is_named_already(const SectionView& view, std::size_t crossing) {
  const LineCrossing& now = view.crossings[crossing];
  return std::any_of(view.crossings.begin(), view.crossings.begin() + static_cast<std::ptrdiff_t>(crossing),
                     [&](const LineCrossing& before) { return before.item == now.item && before.to_m >= now.from_m; });
}

/// What stands before what only shapes the ground.
bool is_plain(const LineCrossing& crossing) { return !crossing.at_from; }

/// From the end of the line to its start; things with nearly the same middle share a flag.
std::vector<SectionName> names_wanted(const SectionView& view, double metres_per_mm) {
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < view.crossings.size(); ++i)
    if (!is_named_already(view, i)) order.push_back(i);
  const auto middle_m = [&](std::size_t i) { return (view.crossings[i].from_m + view.crossings[i].to_m) / 2; };
  std::ranges::stable_sort(order, std::greater{}, middle_m);
  std::ranges::stable_partition(order, [&](std::size_t i) { return !is_plain(view.crossings[i]); });
  std::vector<SectionName> names;
  for (const std::size_t i : order) {
    const auto shared = std::ranges::find_if(names, [&](const SectionName& name) {
      return std::abs(name.names_m - middle_m(i)) < shared_pole_mm * metres_per_mm;
    });
    if (shared == names.end()) {
      names.push_back({view.names[i], middle_m(i)});
    } else {
      shared->text += ", " + view.names[i];
      ++shared->things;
    }
  }
  std::ranges::stable_sort(names, std::greater{}, &SectionName::names_m);
  return names;
}

bool flies_over(const SectionName& flag, double pole_mm) {
  return pole_mm > flag.left_mm - gap_mm / 2 && pole_mm < flag.right_mm + gap_mm / 2;
}

bool disturb(const SectionName& a, const SectionName& b) {
  if (a.row == b.row) return a.left_mm < b.right_mm + gap_mm && b.left_mm < a.right_mm + gap_mm;
  return a.row < b.row ? flies_over(a, b.pole_mm) : flies_over(b, a.pole_mm);
}

/// To the right of its pole in the lowest row where it disturbs none, else to the left, where the poles still to come may
/// be; false where there is no such place.
bool place(SectionName& name, const SectionFrame& frame, int rows, double field_mm) {
  const double wide_mm = width_of_words_mm(name.text, section_letters_mm) + 1;
  name.pole_mm = (name.names_m - frame.from_m) / frame.metres_per_mm;
  for (const double begins_mm : {name.pole_mm, name.pole_mm - wide_mm}) {
    name.left_mm = begins_mm;
    name.right_mm = begins_mm + wide_mm;
    if (begins_mm < 0 || name.right_mm > field_mm) continue;
    for (name.row = 0; name.row < rows; ++name.row) {
      if (std::ranges::none_of(frame.names, [&](const SectionName& other) { return disturb(name, other); }))
        return true;
    }
  }
  return false;
}

void place_names(SectionFrame& frame, std::vector<SectionName> wanted, int rows, double field_mm) {
  for (SectionName& name : wanted) {
    if (place(name, frame, rows, field_mm))
      frame.names.push_back(name);
    else
      frame.unnamed += name.things;
  }
}

/// As many times as large as the height allows; where even the true scale is too high, all of it is drawn smaller.
void choose_scale(SectionFrame& frame, const Levels& levels, double field_height_mm) {
  const double relief_m = levels.high_m - levels.low_m;
  frame.exaggeration = 1;
  for (const double times : exaggerations)
    if (relief_m * times / frame.metres_per_mm <= field_height_mm) frame.exaggeration = times;
  frame.metres_per_mm = std::max(frame.metres_per_mm, relief_m * frame.exaggeration / field_height_mm);
}

}  // namespace

double round_step(double least) {
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double step : {1.0, 2.0, 5.0})
    if (least <= step * power * (1 + 1e-9)) return step * power;
  return 10 * power;
}

namespace {

SectionFrame frame_with(const SectionView& view, const SectionPaper& paper, const Levels& levels, int rows) {
  SectionFrame frame;
  const double length_m = view.ground.length_m(), field_mm = std::max(1.0, paper.width_mm - left_mm - right_mm);
  const double names_mm = rows == 0 ? 0 : rows * section_row_mm + 1;
  const double height_mm = std::max(1.0, paper.height_mm - top_mm - bottom_mm - names_mm);
  frame.metres_per_mm = paper.metres_per_mm.value_or(length_m / field_mm);
  choose_scale(frame, levels, height_mm);
  const double spare_m = std::max(0.0, field_mm * frame.metres_per_mm - length_m);
  frame.from_m = -spare_m / 2;
  frame.to_m = length_m + spare_m / 2;
  const double field_m = height_mm * frame.metres_per_mm / frame.exaggeration;
  frame.low_m = levels.low_m - (field_m - (levels.high_m - levels.low_m)) * below_ratio;
  frame.high_m = frame.low_m + field_m;
  frame.placement = {left_mm - frame.from_m / frame.metres_per_mm,
                     top_mm + names_mm + height_mm + frame.low_m * frame.exaggeration / frame.metres_per_mm,
                     1 / frame.metres_per_mm, 1};
  place_names(frame, names_wanted(view, frame.metres_per_mm), rows, field_mm);
  return frame;
}

}  // namespace

std::optional<SectionFrame> section_frame(const SectionView& view, const SectionPaper& paper) {
  const Levels levels = levels_shown(view);
  if (levels.low_m > levels.high_m) return std::nullopt;
  SectionFrame frame = frame_with(view, paper, levels, 0);
  for (int rows = 1; rows <= most_rows && frame.unnamed > 0; ++rows) {
    SectionFrame taller = frame_with(view, paper, levels, rows);
    if (taller.unnamed < frame.unnamed) frame = std::move(taller);
  }
  return frame;
}

}  // namespace yardwright
