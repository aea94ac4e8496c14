#include "geom/drain/diversion.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "geom/drain/channel.hpp"
#include "geom/drain/open_ground.hpp"
#include "geom/drain/raster.hpp"
#include "geom/ground/graded_line.hpp"
#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

constexpr double built_to_m = 0.1 * 0.3048;
constexpr double largest_m = 4 * 0.3048;
constexpr double roughness_n = 0.03;  // earth with short grass (HEC-22 example 6.1 takes it)
constexpr double side_slope_ratio = 4;
constexpr double narrowest_top_m = 4 * 0.3048;
constexpr double longest_daylight_m = 80;  // that a swale runs on down the slope until its bottom meets the ground

double rounded_up_m(double size_m) { return std::ceil(size_m / built_to_m - 1e-9) * built_to_m; }

bool tells_of_rim(const Finding& finding) {
  return finding.rule == "drain.rim-freeboard" || finding.rule == "drain.flow-past-rim";
}

/// Of every item that Drain has something to say about.
std::map<ItemId, Verdict> verdicts_of(const Findings& findings) {
  std::map<ItemId, Verdict> verdicts;
  for (const Finding& finding : findings) {
    for (const ItemId id : finding.items) {
      const auto [at, is_new] = verdicts.try_emplace(id, finding.verdict);
      if (!is_new) at->second = std::min(at->second, finding.verdict);
    }
  }
  return verdicts;
}

/// Everything that is asked of one pit and its water.
class Diversion {
 public:
  Diversion(const Answer& before, const Site& site, const DesignSurface& surface, const RuleBook& rules,
            const AskAgain& ask_again, MendSearch& search, const PitWater& water)
      : before_{before},
        site_{site},
        surface_{surface},
        ask_again_{ask_again},
        search_{search},
        water_{water},
        open_{site, before.flow.frame},
        fall_ratio_{rules.at("drain.diversion-fall").value},
        freeboard_m_{rules.at("drain.diversion-freeboard").value},
        least_m_{rules.at("drain.diversion-size").value},
        in_catchment_(before.flow.frame.cells(), false) {
    for (const Cell cell : catchment_of_pit(*find(site, water.item), before.flow))
      in_catchment_[static_cast<std::size_t>(cell)] = true;
    lines_ = lines_across();
  }

  std::optional<Mend> berm() {
    return least([this](const SitePath& line) { return berm_along(line, berm_height_m(line)); }, "a berm uphill",
                 "high");
  }
  std::optional<Mend> swale() {
    return least([this](const SitePath& line) { return swale_along(line); }, "a swale uphill", "deep");
  }

 private:
  /// Earth along a line; no thing where that line will not do.
  struct Earth {
    std::optional<Thing> thing;
    double size_m = 0;
    double length_m = 0;
  };
  using Build = std::function<Earth(const SitePath&)>;

  double cell_m() const { return before_.flow.frame.cell_m; }
  double top_m() const { return std::max(narrowest_top_m, 1.5 * cell_m()); }  // wide enough for the grid to see it
  double half_width_m() const { return top_m() / 2 + side_slope_ratio * least_m_; }
  bool drains_to_pit(SitePoint at) const {
    const Cell cell = cell_at(before_.flow.frame, at);
    return cell != outside && in_catchment_[static_cast<std::size_t>(cell)];
  }

  /// To where the ground drains elsewhere, and a little beyond.
  SitePath laid(SitePoint from, Hand hand, double fall_ratio) const {
    const LineAcross line{hand, fall_ratio, std::max(cell_m(), 1.0), std::max(3 * cell_m(), 4.0)};
    double beyond_m = 0;
    const auto goes_on = [&](SitePoint at) {
      if (!drains_to_pit(at)) beyond_m += line.step_m;
      return beyond_m <= half_width_m() + 2 * cell_m() && open_.holds(at, half_width_m());
    };
    return line_across(surface_.design, from, line, goes_on);
  }

  SitePath line_through(SitePoint at, Hand hand) const {
    SitePath line = laid(at, other(hand), -fall_ratio_);
    std::ranges::reverse(line);
    const SitePath falling = laid(at, hand, fall_ratio_);
    line.insert(line.end(), falling.begin() + 1, falling.end());
    return line;
  }

  /// Across the way of its water, the shortest first.
  std::vector<SitePath> lines_across() const {
    std::vector<SitePath> lines;
    const double way_m = length(water_.longest_way);
    for (double off_m = half_width_m(); off_m < way_m; off_m *= 1.25) {
      const SitePoint at = pose_at(water_.longest_way, way_m - off_m).at;
      if (!open_.holds(at, half_width_m())) continue;
      for (const Hand hand : {Hand::left, Hand::right}) {
        SitePath line = line_through(at, hand);
        if (line.size() > 4) lines.push_back(std::move(line));
      }
    }
    std::ranges::sort(lines, {}, [](const SitePath& line) { return length(line); });
    return lines;
  }

  /// Of the peak of its water, all of which a line across its way may have to carry.
  double peak_m3_per_s() const {
    if (water_.peak.state == PeakState::computed) return water_.peak.peak_m3_per_s;
    return water_.rational_peak_m3_per_s.value_or(0);
  }

  /// Between the berm and the slope above it: a V of which one side is the ground.
  double berm_height_m(const SitePath& line) const {
    const double rise_ratio = length(rise_at(surface_.design, line[line.size() / 2], 3 * cell_m()));
    const Channel toe{0, (side_slope_ratio + 1 / std::max(rise_ratio, fall_ratio_)) / 2, fall_ratio_, roughness_n};
    return rounded_up_m(std::max(normal_flow(toe, peak_m3_per_s()).depth_m + freeboard_m_, least_m_));
  }

  Earth berm_along(const SitePath& line, double height_m) const {
    const SitePath path = simplified(line, cell_m() / 2);
    return {Berm{path, height_m, top_m(), side_slope_ratio}, height_m, length(path)};
  }

  Earth swale_along(const SitePath& line) const {
    const Channel channel{top_m(), side_slope_ratio, fall_ratio_, roughness_n};
    const double depth_m =
        rounded_up_m(std::max(normal_flow(channel, peak_m3_per_s()).depth_m + freeboard_m_, least_m_));
    const SitePath path = simplified(to_daylight(line, depth_m), cell_m() / 2);
    if (path.empty()) return {};
    Swale swale;
    swale.path = path;
    swale.start_depth_m = depth_m;
    swale.end_depth_m = 0;
    swale.bottom_width_m = top_m();
    swale.side_slope_ratio = side_slope_ratio;
    return {swale, depth_m, length(path)};
  }

  /// On down the slope to where its bottom comes out on the ground; nothing where it does not.
  SitePath to_daylight(SitePath line, double depth_m) const {
    const double bottom_m = surface_.existing_level_m(line.front()) - depth_m - fall_ratio_ * length(line);
    const LineAcross down{Hand::left, fall_ratio_, std::max(cell_m(), 1.0), 3 * cell_m()};
    double run_m = 0;
    bool is_out = surface_.existing_level_m(line.back()) <= bottom_m;
    const auto goes_on = [&](SitePoint at) {
      if (is_out || !open_.holds(at, half_width_m()) || run_m > longest_daylight_m) return false;
      run_m += down.step_m;
      is_out = surface_.existing_level_m(at) <= bottom_m - fall_ratio_ * run_m;
      return true;
    };
    const SitePath tail = line_down(surface_.design, line.back(), down, goes_on);
    line.insert(line.end(), tail.begin() + 1, tail.end());
    return is_out ? line : SitePath{};
  }

  std::optional<Mend> least(const Build& build, const char* action, const char* across) {
    for (const SitePath& line : lines_) {
      if (!passes(build(line))) continue;
      const Earth earth = build(shortened(line, build));
      return Mend{action, Quantity::length, earth.size_m, earth.size_m, edits(earth), earth.length_m, across};
    }
    return std::nullopt;
  }

  /// From its upper end, as far as it still passes.
  SitePath shortened(const SitePath& line, const Build& build) {
    std::ptrdiff_t left_off = 0, too_many = std::ssize(line) - 4;
    const auto rest = [&](std::ptrdiff_t off) { return SitePath(line.begin() + off, line.end()); };
    while (too_many - left_off > 2) {
      const std::ptrdiff_t middle = (left_off + too_many) / 2;
      (passes(build(rest(middle))) ? left_off : too_many) = middle;
    }
    return rest(left_off);
  }

  Edits edits(const Earth& earth) const {
    const Item& pit = *find(site_, water_.item);
    const char* kind = std::holds_alternative<Berm>(*earth.thing) ? "Berm above " : "Swale above ";
    return {PutItem{Item{next_id(site_), kind + title_of(pit), pit.phase, {}, *earth.thing}}};
  }

  /// The pit passes, and nothing else is worse for it.
  bool passes(const Earth& earth) {
    if (!earth.thing || earth.size_m > largest_m || !search_.may_seek()) return false;
    const Answer after = ask_again_(yardwright::apply(site_, edits(earth)));
    const auto wet = [&](const Finding& finding) {
      return tells_of_rim(finding) && finding.items.front() == water_.item && finding.verdict != Verdict::pass;
    };
    if (std::ranges::any_of(after.findings, wet)) return false;
    const auto now = verdicts_of(after.findings);
    return std::ranges::all_of(verdicts_of(before_.findings), [&](const auto& was) {
      const auto is = now.find(was.first);
      return is != now.end() && is->second >= was.second;
    });
  }

  const Answer& before_;
  const Site& site_;
  const DesignSurface& surface_;
  const AskAgain& ask_again_;
  MendSearch& search_;
  const PitWater& water_;
  OpenGround open_;
  double fall_ratio_, freeboard_m_, least_m_;
  std::vector<bool> in_catchment_;
  std::vector<SitePath> lines_;
};

}  // namespace

void offer_diversions(Answer& answer, const Site& site, const DesignSurface& surface, const RuleBook& rules,
                      const AskAgain& ask_again, MendSearch& search) {
  for (Finding& finding : answer.findings) {
    if (!tells_of_rim(finding) || finding.verdict == Verdict::pass || finding.verdict == Verdict::not_checked) continue;
    const auto water = std::ranges::find(answer.pits, finding.items.front(), &PitWater::item);
    if (water == answer.pits.end() || !search.may_seek()) continue;
    Diversion diversion{answer, site, surface, rules, ask_again, search, *water};
    for (std::optional<Mend> mend : {diversion.berm(), diversion.swale()}) {
      if (mend) finding.mends.push_back(std::move(*mend));
    }
  }
}

}  // namespace yardwright::drain
