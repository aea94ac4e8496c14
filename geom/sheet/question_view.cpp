#include "geom/sheet/question_view.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "geom/ground/graded_contours.hpp"
#include "geom/grow/grow.hpp"
#include "geom/sheet/drain_plan.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/sheet/slope_arrows.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright {

namespace {

/// A box that grows.
class Growing {
 public:
  void take(const Box& more) {
    if (!box_) box_ = more;
    box_->low = {std::min(box_->low.x, more.low.x), std::min(box_->low.y, more.low.y)};
    box_->high = {std::max(box_->high.x, more.high.x), std::max(box_->high.y, more.high.y)};
  }
  void take(SitePoint point) { take(Box{point, point}); }
  void take(const SitePath& path) {
    for (const SitePoint point : path) take(point);
  }
  const std::optional<Box>& box() const { return box_; }

 private:
  std::optional<Box> box_;
};

bool handles_grain(const Thing& thing) {
  return std::holds_alternative<Bin>(thing) || std::holds_alternative<Leg>(thing) ||
         std::holds_alternative<OverheadHolding>(thing) || std::holds_alternative<Dryer>(thing);
}

void take_routes(Growing& ground, const turn::Answer& answer) {
  for (const turn::DrivenRoute& route : answer.routes) {
    for (const Polygon& swept : route.swept) ground.take(box_of(swept.outer));
  }
}

void take_pairs(Growing& ground, const clear::Answer& answer) {
  for (const clear::NearPlace& near : answer.near) {
    ground.take(near.pair.a);
    ground.take(near.pair.b);
  }
}

void take_items(Growing& ground, const Site& site, bool (*wanted)(const Thing&)) {
  for (const Item& item : site.items) {
    if (!wanted(item.thing)) continue;
    if (const auto outline = footprint(item.thing)) ground.take(box_of(*outline));
  }
}

/// Only what is on the plan.
std::vector<KeyRow> reach_key(const reach::Answer& answer) {
  std::vector<KeyRow> rows;
  const bool to_mend = worst(answer.findings) == Verdict::fail || worst(answer.findings) == Verdict::caution;
  if (!answer.spouts.empty())
    rows.push_back(key_of_line({palette::reach, 0.6, {}}, "spout that is steep enough: slope · length"));
  if (!answer.spouts.empty() && to_mend)
    rows.push_back(key_of_line({palette::fail, 0.6, {1.8, 1.1}}, "spout with something to mend"));
  if (!answer.rings.empty()) {
    rows.push_back(key_of_line({palette::reach.faded(0.7), 0.25, {1.6, 1.1}},
                               "how far a leg reaches a bin of that size, on this ground, with dry grain"));
  }
  return rows;
}

std::vector<KeyRow> turn_key(const Site& site, const turn::Answer& answer) {
  std::vector<KeyRow> rows{key_of_line({palette::water.faded(0.75), 0.3, {}}, "edge of what the vehicle sweeps"),
                           key_of_line({palette::water.faded(0.6), 0.2, {2.4, 1.2}}, "way of its front axle"),
                           key_of_line({palette::water, 0.3, {}}, "room beside what it passes nearest")};
  for (const turn::DrivenRoute& route : answer.routes) {
    const Item* item = find(site, route.route);
    const Route* drawn = item ? as<Route>(*item) : nullptr;
    if (drawn) rows.push_back({{}, fmt::format("{}: vehicle {}", title_of(*item), drawn->vehicle)});
  }
  return rows;
}

std::string type_words(const Storm& storm) {
  if (storm.type == StormType::own) return "falling as the yard's own table says";
  return fmt::format("type {}", names_of(storm.type)[static_cast<std::size_t>(storm.type)]);
}

void add_water_keys(std::vector<KeyRow>& rows, const drain::Answer& answer) {
  if (!answer.ponds.empty()) {
    rows.push_back(key_of_area(palette::water.faded(0.28), {palette::water, 0.25, {}},
                               "hollow, full to where it spills, and its way out"));
  }
  KeyRow way = key_of_line(gathering_way_stroke, "where water runs together, and which way");
  way.sample.push_back(LineMark{{{2.6, -0.9}, {4.2, 0}, {2.6, 0.9}}, gathering_way_stroke, false});
  rows.push_back(std::move(way));
  if (answer.pits.empty()) return;
  rows.push_back(key_of_line({palette::water.faded(0.6), 0.25, {1.2, 1.0}}, "ground that drains to a pit"));
  rows.push_back(key_of_line(told_way_stroke, "longest way of its water"));
}

KeyRow key_of_contours(const ContourLook& look, std::string words) {
  return key_of_line({look.index_line, look.index_mm, look.dash_mm}, std::move(words));
}

void add_ground_keys(std::vector<KeyRow>& rows, const DesignSurface& surface, const PlanStyle& style) {
  const double interval_m = drainage_interval_m(surface, style);
  if (!(interval_m > 0)) return;
  const auto length_words = [&](double metres) { return short_text_of(metres, Quantity::length, style.units); };
  rows.push_back(key_of_contours(design_contour_look,
                                 fmt::format("contour of the ground as it will lie, every {}, heavier every {}",
                                             length_words(interval_m), length_words(5 * interval_m))));
  if (!existing_contours_where_graded(surface, interval_m).empty())
    rows.push_back(
        key_of_contours(existing_contour_look, "contour of the ground as it lies today, where it is graded"));
  rows.push_back({slope_arrow_sample(), "the ground will fall this way, by so much"});
}

std::vector<KeyRow> grow_key(const Site& site, const PlanStyle& style) {
  const Thing next = grow::next_bin(site);
  return {key_of_area(palette::pass.faded(0.22), {palette::pass, 0.35, {}}, "its middle can lie here"),
          key_of_area(palette::caution.faded(0.16), {palette::caution.faded(0.6), 0.2, {1.2, 0.8}},
                      "here advice alone speaks against it"),
          key_of_line({palette::pass, 0.4, {1.6, 0.9}}, "where it stands with most to spare any way"),
          {{}, fmt::format("Next: {}, {}", kind_label(next), size_words(next, style.units))}};
}

std::vector<KeyRow> drain_key(const Site& site, const Answers& answers, const PlanStyle& style) {
  std::vector<KeyRow> rows;
  add_ground_keys(rows, answers.surface, style);
  add_water_keys(rows, *answers.drain);
  rows.push_back(
      {{},
       fmt::format("Storm: {} of rain in 24 h, {}", short_text_of(site.storm.rain_m, Quantity::rain_depth, site.units),
                   type_words(site.storm))});
  return rows;
}

std::vector<KeyRow> clear_key(const clear::Answer& answer) {
  const auto has = [&](Verdict verdict) {
    return std::ranges::any_of(answer.near, [&](const clear::NearPlace& near) { return near.verdict == verdict; });
  };
  std::vector<KeyRow> rows;
  if (has(Verdict::fail)) rows.push_back(key_of_line({palette::fail, 0.3, {}}, "too near: measured < needed"));
  if (has(Verdict::caution))
    rows.push_back(key_of_line({palette::caution, 0.3, {}}, "nearer than advised, or ask whom the finding names"));
  if (has(Verdict::pass)) {
    rows.push_back(
        key_of_line({palette::pass, 0.15, {}}, "the tightest place of each distance that is kept: measured ≥ needed"));
  }
  if (!answer.strips.empty()) {
    rows.push_back(key_of_area(palette::caution.faded(0.10), {palette::caution.faded(0.7), 0.2, {1.2, 0.8}},
                               "raised machines stay out: ask the utility"));
  }
  return rows;
}

}  // namespace

Box ground_of(Question question, const Site& site, const Answers& answers) {
  Growing ground;
  if (question == Question::drain || question == Question::grow) return extent_of(site);
  if (question == Question::reach || question == Question::pace) take_items(ground, site, handles_grain);
  if (question == Question::turn) take_routes(ground, *answers.turn);
  if (question == Question::clear) {
    take_pairs(ground, *answers.clear);
    take_items(ground, site, [](const Thing&) { return true; });
  }
  for (const Finding& finding : findings_of(answers, question)) ground.take(finding.place);
  if (!ground.box() || ground.box()->low == ground.box()->high) return extent_of(site);
  return *ground.box();
}

std::vector<KeyRow> key_of(Question question, const Site& site, const Answers& answers, const PlanStyle& style) {
  switch (question) {
    case Question::reach: return reach_key(*answers.reach);
    case Question::turn: return turn_key(site, *answers.turn);
    case Question::drain: return drain_key(site, answers, style);
    case Question::clear: return clear_key(*answers.clear);
    case Question::pace: return {{{}, "flows: by the centre sump alone"}, {{}, "stays: on the floor, without a sweep"}};
    case Question::grow: return grow_key(site, style);
  }
  return {};
}

}  // namespace yardwright
