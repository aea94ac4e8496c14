#include "geom/turn/grade_mends.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "geom/turn/grade.hpp"
#include "geom/turn/least_change.hpp"

namespace yardwright::turn {

namespace {

constexpr double exact_ratio = 1e-4;
constexpr double met_m = 0.05;  ///< an end this near to the ground meets it

/// The drives graded to a ratio, where they were not gentler before.
Edits graded(const std::vector<Item>& drives, double ratio) {
  Edits edits;
  for (Item item : drives) {
    Drive& drive = std::get<Drive>(item.thing);
    drive.greatest_grade_ratio = drive.is_graded() ? std::min(drive.greatest_grade_ratio, ratio) : ratio;
    edits.push_back(PutItem{std::move(item)});
  }
  return edits;
}

/// Those that the route runs on where it is too steep.
std::vector<Item> drives_under(const RouteCase& route, const SitePath& steep_places) {
  std::vector<Item> drives;
  for_each<Drive>(route.site, [&](const Item& item, const Drive& drive) {
    const auto on_it = [&](SitePoint at) {
      return !drive.path.empty() && nearest_on_path(drive.path, at).distance_m <= drive.width_m / 2;
    };
    if (std::ranges::any_of(steep_places, on_it)) drives.push_back(item);
  });
  return drives;
}

Item new_drive_along(const RouteCase& route) {
  const Route& way = route.route();
  return {next_id(route.site), "Drive of " + title_of(route.item), route.item.phase, route.item.gone_in,
          Drive{.path = way.path, .corner_radius_m = way.corner_radius_m}};
}

/// Whether the drives would end above or below the ground that they end on today.
bool leaves_ground_at_ends(const std::vector<Item>& drives, const DesignSurface& before, const DesignSurface& after) {
  return std::ranges::any_of(drives, [&](const Item& item) {
    const SitePath& path = as<Drive>(item)->path;
    return std::ranges::any_of(std::array{path.front(), path.back()}, [&](SitePoint end) {
      return std::abs(after.level_m(end) - before.level_m(end)) > met_m;
    });
  });
}

std::string names_of_all(const std::vector<Item>& items) {
  std::string names;
  for (const Item& item : items) names += (names.empty() ? "" : " and ") + title_of(item);
  return names;
}

/// What is graded, and what the mends say of it.
struct Plan {
  std::vector<Item> drives;
  std::string action;
};

std::optional<Mend> graded_by(const Plan& plan, const RouteCase& route, const DesignSurface& surface,
                              const GradeLimit& limit, double steepest_ratio) {
  if (plan.drives.empty()) return std::nullopt;
  const auto shaped = [&](double under_ratio) {
    return design_surface(yardwright::apply(route.site, graded(plan.drives, limit.ratio - under_ratio)));
  };
  const auto under_ratio = least_that_passes(limit.ratio * 0.99, exact_ratio, [&](double ratio) {
    return steepest_grade(route.line, shaped(ratio), limit.over_m).grade_ratio <= limit.ratio;
  });
  if (!under_ratio) return std::nullopt;
  const double becomes = limit.ratio - *under_ratio;
  const bool leaves_ends = leaves_ground_at_ends(plan.drives, surface, shaped(*under_ratio));
  return Mend{plan.action + (leaves_ends ? ", cutting and filling at its ends," : ""), Quantity::grade,
              steepest_ratio - becomes, becomes, graded(plan.drives, becomes)};
}

}  // namespace

std::vector<Mend> grade_mends(const RouteCase& route, const DesignSurface& surface, const GradeLimit& limit,
                              double steepest_ratio) {
  const std::vector<Item> under = drives_under(route, steeper_places(route.line, surface, limit.over_m, limit.ratio));
  for (const Plan& plan :
       {Plan{under, "ease the grade of " + names_of_all(under)},
        Plan{{new_drive_along(route)}, "ease the grade of " + title_of(route.item) + ", on a new drive"}}) {
    if (auto mend = graded_by(plan, route, surface, limit, steepest_ratio)) return {std::move(*mend)};
  }
  return {};
}

}  // namespace yardwright::turn
