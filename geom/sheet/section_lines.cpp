#include "geom/sheet/section_lines.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "geom/ground/fall.hpp"
#include "geom/ground/ground_section.hpp"
#include "geom/shape/path.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright {

namespace {

constexpr double half_length_m = 100 * foot_m;
constexpr double beyond_culvert_m = 30 * foot_m;
constexpr double least_grade = 0.003;
constexpr std::array fall_radii_m{30.0, 15.0, 8.0};  ///< the yard's fall rather than a bank's
constexpr double letter_mm = 2.3, circle_mm = 2.3, over_letter = 15, over_line = 4;
const Stroke rim{palette::ink, 0.25, {}};

/// A to Z, then AA, AB.
std::string letter_of(std::size_t number) {
  const auto last = static_cast<char>('A' + number % 26);
  return number < 26 ? std::string{last} : letter_of(number / 26 - 1) + last;
}

bool is_known(const DesignSurface& surface, SitePoint at) {
  return surface.design.frame().contains(surface.design.frame().cell_of(at));
}

const Item* deepest_pit(const Site& site) {
  const Item* deepest = nullptr;
  for (const Item& item : site.items) {
    const PitBody* pit = pit_body(item.thing);
    if (pit == nullptr || pit->depth_m <= 0) continue;
    if (deepest == nullptr || pit->depth_m > pit_body(deepest->thing)->depth_m) deepest = &item;
  }
  return deepest;
}

/// From the higher side to the lower; eastward over level ground.
std::optional<SiteVector> downhill(const DesignSurface& surface, SitePoint at) {
  for (const double radius_m : fall_radii_m) {
    const auto fall = fall_at(surface.design, at, radius_m);
    if (fall && fall->grade_ratio >= least_grade) return fall->downhill;
  }
  return std::nullopt;
}

/// As far as a half length, or as the ground is known.
SitePoint end_of(const DesignSurface& surface, SitePoint from, SiteVector way) {
  constexpr double step_m = 0.5;
  double far_m = 0;
  while (far_m < half_length_m && is_known(surface, from + way * (far_m + step_m))) far_m += step_m;
  return from + way * std::min(far_m, half_length_m);
}

std::optional<SectionLine> through(const Item& pit, const DesignSurface& surface) {
  const SitePoint at = place_of(pit.thing);
  if (!is_known(surface, at)) return std::nullopt;
  const auto way = downhill(surface, at);
  const SiteVector along = way.value_or(SiteVector{1, 0});
  return SectionLine{"",
                     "through " + title_of(pit) + (way ? ", down the ground's fall" : ", west to east"),
                     {end_of(surface, at, -along), end_of(surface, at, along)}};
}

/// Its own line, longer at both ends.
SitePath lengthened(SitePath path, double by_m) {
  const SitePoint before = path.front() - unit(path[1] - path[0]) * by_m;
  const SitePoint after = path.back() + unit(path.back() - path[path.size() - 2]) * by_m;
  path.insert(path.begin(), before);
  path.push_back(after);
  return path;
}

bool is_on_ground(const DesignSurface& surface, const SitePath& path) {
  const GroundSection ground = ground_section(surface, path);
  return std::ranges::any_of(ground.points, [](const SectionPoint& point) { return point.levels.has_value(); });
}

void add_end(PlanParts& parts, const std::string& letter, SitePoint end, SiteVector out, SiteVector look,
             double metres_per_mm) {
  const SitePoint middle = end + out * (circle_mm * metres_per_mm);
  const DrawVector ahead{look.x, -look.y}, aside{-ahead.y, ahead.x};
  const DrawPoint tip = DrawPoint{} + ahead * (circle_mm * 1.75);
  SymbolMark mark{on_plan(middle), {}};
  mark.marks.emplace_back(
      AreaMark{{{tip, DrawPoint{} + aside * circle_mm, DrawPoint{} - aside * circle_mm}}, palette::ink});
  mark.marks.emplace_back(CircleMark{{0, 0}, circle_mm, palette::card, rim});
  parts.shapes.push_back(std::move(mark));
  TextMark text = words(middle, letter, letter_mm, palette::ink);
  text.bold = true;
  text.halo = palette::none;
  parts.shapes.push_back(std::move(text));
  parts.obstacles.push_back({Disc{middle, 0}, over_letter, true, circle_mm + 1, {}});
}

std::vector<SitePath> legs_drawn(const SectionLine& section) {
  const SitePath& path = section.path;
  if (!section.follows_item) return {path};
  return {{path[0], path[1]}, {path[path.size() - 2], path.back()}};
}

}  // namespace

const Stroke section_line_stroke{palette::ink, 0.2, {6, 1.2, 1.2, 1.2}};

std::vector<SectionLine> section_lines(const Site& site, const DesignSurface& surface) {
  std::vector<SectionLine> lines;
  if (!surface.known()) return lines;
  for (const Item& item : site.items) {
    const Dimension* drawn = as<Dimension>(item);
    if (drawn != nullptr && !item.name.empty() && length(drawn->path) > 0)
      lines.push_back({"", item.name, drawn->path});
  }
  if (lines.empty()) {
    const Item* pit = deepest_pit(site);
    const auto line = pit != nullptr ? through(*pit, surface) : std::nullopt;
    if (line && length(line->path) > 0) lines.push_back(*line);
  }
  for (const Item& item : site.items) {
    const Culvert* culvert = as<Culvert>(item);
    if (culvert != nullptr && length(culvert->path) > 0)
      lines.push_back({"", "along " + title_of(item), lengthened(culvert->path, beyond_culvert_m), true});
  }
  std::erase_if(lines, [&](const SectionLine& line) { return !is_on_ground(surface, line.path); });
  for (std::size_t i = 0; i < lines.size(); ++i) lines[i].letter = letter_of(i);
  return lines;
}

PlanParts section_line_parts(const std::vector<SectionLine>& lines, double metres_per_mm) {
  PlanParts parts;
  for (const SectionLine& section : lines) {
    const SitePath& path = section.path;
    for (const SitePath& leg : legs_drawn(section)) {
      parts.shapes.push_back(line(leg, section_line_stroke));
      parts.obstacles.push_back({leg, over_line, false, 0, {}});
    }
    const SiteVector first = unit(path[1] - path[0]), last = unit(path.back() - path[path.size() - 2]);
    add_end(parts, section.letter, path.front(), -first, left_of(first), metres_per_mm);
    add_end(parts, section.letter, path.back(), last, left_of(last), metres_per_mm);
  }
  return parts;
}

}  // namespace yardwright
