#include "geom/grow/layout_drafts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geom/grow/allowed_region.hpp"
#include "geom/grow/cost.hpp"
#include "geom/grow/room.hpp"
#include "geom/shape/innermost.hpp"

namespace yardwright::grow {

namespace {

constexpr double lattice_m = 1.0;
constexpr double hair_m = 0.01;
constexpr double falls_away_m =
    6.5;  // between two walls: each wants 10 ft of ground that falls from it, and a cell to end in
constexpr int tries_at_a_place = 40;  // of a candidate before a size is given up; more make a draft slower, not better

std::vector<double> heights_for(const Item& leg, const GrowthBrief& brief) {
  std::vector<double> heights{as<Leg>(leg)->discharge_height_m};
  for (const double height_m : brief.discharge_m) {
    if (height_m > heights.front() && std::ranges::count(heights, height_m) == 0) heights.push_back(height_m);
  }
  return heights;
}

std::vector<std::vector<double>> choices_for(const GrowthTask& task) {
  std::vector<std::vector<double>> choices{{}};
  for (const Item& leg : task.legs) {
    std::vector<std::vector<double>> longer;
    for (const double height_m : heights_for(leg, task.brief)) {
      for (std::vector<double> choice : choices) {
        choice.push_back(height_m);
        longer.push_back(std::move(choice));
      }
    }
    choices = std::move(longer);
  }
  return choices;
}

std::vector<SitePoint> lattice_in(const Region& region) {
  std::vector<SitePoint> places;
  for (const Polygon& part : region) {
    const Box box = box_of(part.outer);
    for (double y = box.low.y + lattice_m / 2; y < box.high.y; y += lattice_m) {
      for (double x = box.low.x + lattice_m / 2; x < box.high.x; x += lattice_m) {
        if (holds({part}, {x, y})) places.push_back({x, y});
      }
    }
    if (places.empty()) places.push_back(innermost({part})->at);
  }
  return places;
}

double cost_of_parts(const GrowthTask& task, std::vector<Item> items) {
  Site site;
  site.rule_overrides = task.site.rule_overrides;
  site.items = std::move(items);
  return cost_of(quantities(site, {}, task.shipped), task.book).sum;
}

double stored_by(const GrowthTask& task, const Bin& bin) {
  Site site;
  site.items = {{ItemId{1}, "", 0, {}, bin}};
  return amount_of(quantities(site, {}, task.catalogs), Work::bin);
}

}  // namespace

/// What a draft is after.
struct LayoutDrafts::Taste {
  std::vector<double> weights;  ///< of the sizes
  double until_m3 = 0;
  double near_leg = 1;   ///< how much a metre to the leg counts
  double near_each = 0;  ///< and a metre to the nearest new bin
  double apart_m = 0;    ///< walls of bins, more than Clear asks for
  int looks = 8;         ///< places that are looked at for a bin
};

std::size_t leg_choice_count(const GrowthTask& task) {
  std::size_t count = 1;
  for (const Item& leg : task.legs) count *= heights_for(leg, task.brief).size();
  return count;
}

LayoutDrafts::LayoutDrafts(const GrowthTask& task, const std::stop_token& stop, const std::function<void(double)>& told)
    : task_{task}, leg_choices_{choices_for(task)} {
  for (const std::vector<double>& choice : leg_choices_) {
    const std::vector<Item>& now = task.legs;
    std::vector<Item> then = now;
    for (std::size_t i = 0; i < then.size(); ++i) std::get<Leg>(then[i].thing).discharge_height_m = choice[i];
    leg_cost_.push_back(cost_of_parts(task, then) - cost_of_parts(task, now));
  }
  for (std::size_t size = 0; size < task.brief.bins.size(); ++size) {
    const Bin bin = task.bin_of(size);
    stored_m3_.push_back(stored_by(task, bin));
    least_cost_.push_back(cost_of_parts(task, {{ItemId{1}, "", 0, {}, bin}}));
    conflicts_.emplace_back();
    for (std::size_t other = 0; other < task.brief.bins.size(); ++other) {
      const auto next = newcomer(task.site, task.answers, task.catalogs.rules, task.bin_of(other), 0);
      conflicts_.back().push_back(in_the_way_of(*next, bin));
    }
  }
  for_each<Bin>(task.site, [&](const Item&, const Bin& bin) { stood_.push_back({bin.at, bin.diameter_m / 2}); });
  find_ground(stop, told);
}

void LayoutDrafts::find_ground(const std::stop_token& stop, const std::function<void(double)>& told) {
  grounds_.assign(leg_choices_.size(), std::vector<SizeGround>(task_.brief.bins.size()));
  std::size_t done = 0;
  for (std::size_t choice = 0; choice < leg_choices_.size(); ++choice) {
    const Site site = with_legs(task_, leg_choices_[choice]);
    for (std::size_t size = 0; size < task_.brief.bins.size() && !stop.stop_requested(); ++size) {
      const auto next = newcomer(site, task_.answers, task_.catalogs.rules, task_.bin_of(size), 0);
      AllowedRegion allowed = allowed_region(*next);
      SizeGround& ground = grounds_[choice][size];
      ground.region = std::move(task_.brief.bears_advice ? allowed.bearable : allowed.free);
      ground.places = lattice_in(ground.region);
      if (told) told(static_cast<double>(++done) / static_cast<double>(plain_count()));
    }
  }
}

bool LayoutDrafts::has_ground() const {
  return std::ranges::any_of(grounds_, [](const std::vector<SizeGround>& sizes) {
    return std::ranges::any_of(sizes, [](const SizeGround& one) { return !one.places.empty(); });
  });
}

std::size_t LayoutDrafts::choice_of(const Layout& layout) const {
  return static_cast<std::size_t>(std::ranges::find(leg_choices_, layout.discharge_m) - leg_choices_.begin());
}

double LayoutDrafts::stored_m3(const std::vector<Stand>& stands) const {
  double sum = 0;
  for (const Stand& one : stands) sum += stored_m3_[one.size];
  return sum;
}

double LayoutDrafts::least_cost(std::size_t choice, const std::vector<Stand>& stands) const {
  double sum = leg_cost_[choice];
  for (const Stand& one : stands) sum += least_cost_[one.size];
  return sum;
}

double LayoutDrafts::to_leg_m(SitePoint at) const {
  double nearest_m = std::numeric_limits<double>::infinity();
  for (const Item& leg : task_.legs) nearest_m = std::min(nearest_m, distance(as<Leg>(leg)->at, at));
  return nearest_m;
}

bool LayoutDrafts::fits(std::size_t choice, const std::vector<Stand>& stands, const Stand& next) const {
  if (!holds(grounds_[choice][next.size].region, next.at)) return false;
  return std::ranges::none_of(stands, [&](const Stand& one) {
    return holds(conflicts_[one.size][next.size], SitePoint{} + (next.at - one.at));
  });
}

/// Whether walls are as far apart as a draft wants them, from bins that stand and from new ones.
bool LayoutDrafts::is_apart(const std::vector<Stand>& stands, const Stand& next, double apart_m) const {
  const auto wall_m = [&](std::size_t size) { return task_.brief.bins[size].diameter_m / 2; };
  const double own_m = wall_m(next.size) + apart_m;
  return std::ranges::none_of(stood_,
                              [&](const Disc& one) { return distance(one.centre, next.at) < own_m + one.radius_m; }) &&
         std::ranges::none_of(stands,
                              [&](const Stand& one) { return distance(one.at, next.at) < own_m + wall_m(one.size); });
}

/// A place of the ground, or one that touches what a new bin keeps free around it.
std::optional<SitePoint> LayoutDrafts::candidate(std::size_t choice, const std::vector<Stand>& stands, std::size_t size,
                                                 Dice& dice) const {
  const std::vector<SitePoint>& places = grounds_[choice][size].places;
  if (places.empty()) return std::nullopt;
  if (!stands.empty() && dice.hits(0.4)) {
    const Stand& beside = stands[dice.below(stands.size())];
    const Region& conflict = conflicts_[beside.size][size];
    const std::vector<SitePoint>& edge = conflict[dice.below(conflict.size())].outer;
    const SiteVector way = edge[dice.below(edge.size())] - SitePoint{};
    return beside.at + way + unit(way) * hair_m;
  }
  const SitePoint at = places[dice.below(places.size())];
  const SitePoint off{at.x + dice.between(-lattice_m / 2, lattice_m / 2),
                      at.y + dice.between(-lattice_m / 2, lattice_m / 2)};
  return holds(grounds_[choice][size].region, off) ? off : at;
}

/// The best of the places looked at, of a size thrown by its weight.
std::optional<Stand> LayoutDrafts::placed(std::size_t choice, const std::vector<Stand>& stands, const Taste& taste,
                                          Dice& dice) const {
  double sum = 0;
  for (const double weight : taste.weights) sum += weight;
  double left = dice.between(0, sum);
  Stand next;
  while (next.size + 1 < taste.weights.size() && left >= taste.weights[next.size]) left -= taste.weights[next.size++];
  std::optional<Stand> best;
  double least = std::numeric_limits<double>::infinity();
  for (int tries = 0, looks = 0; tries < tries_at_a_place + taste.looks && looks < taste.looks; ++tries) {
    const auto at = candidate(choice, stands, next.size, dice);
    if (!at) return std::nullopt;
    next.at = *at;
    if (!fits(choice, stands, next) || !is_apart(stands, next, taste.apart_m)) continue;
    ++looks;
    double bad = taste.near_leg * to_leg_m(*at);
    for (const Stand& other : stands)
      bad += taste.near_each * distance(other.at, *at) / static_cast<double>(stands.size());
    if (bad < least) best = next, least = bad;
  }
  return best;
}

void LayoutDrafts::fill(std::size_t choice, std::vector<Stand>& stands, const Taste& taste, Dice& dice) const {
  constexpr int most_misses = 3;
  for (int misses = 0; misses < most_misses && static_cast<int>(stands.size()) < task_.brief.most_bins &&
                       stored_m3(stands) < taste.until_m3;) {
    const auto next = placed(choice, stands, taste, dice);
    if (!next) {
      ++misses;
      continue;
    }
    stands.push_back(*next);
    if (!task_.brief.budget || least_cost(choice, stands) <= *task_.brief.budget) continue;
    stands.pop_back();
    ++misses;
  }
}

LayoutDrafts::Taste LayoutDrafts::taste_of(Dice& dice) const {
  Taste taste;
  for (std::size_t i = 0; i < task_.brief.bins.size(); ++i) taste.weights.push_back(dice.hits(0.5) ? dice.part() : 0.0);
  if (std::ranges::max(taste.weights) == 0) taste.weights[dice.below(taste.weights.size())] = 1;
  // All that is wanted, or a part of it for less money.
  taste.until_m3 = task_.brief.wanted_m3 * (dice.hits(0.4) ? 1.0 : dice.part());
  taste.near_leg = dice.between(-0.3, 1);
  taste.near_each = dice.between(-0.3, 1);
  taste.apart_m = dice.hits(0.6) ? falls_away_m : dice.between(0, falls_away_m);
  taste.looks = 1 + static_cast<int>(dice.below(24));
  return taste;
}

Layout LayoutDrafts::plain(std::size_t number, Dice& dice) const {
  const std::size_t sizes = task_.brief.bins.size(), choice = number / sizes;
  Taste taste{std::vector<double>(sizes, 0.0), task_.brief.wanted_m3, 1, 0.2, falls_away_m, 64};
  taste.weights[number % sizes] = 1;
  Layout layout{leg_choices_[choice], {}};
  fill(choice, layout.stands, taste, dice);
  return layout;
}

/// Legs as they are more often than each other height: a leg that is raised is much of the money.
std::size_t LayoutDrafts::thrown_choice(Dice& dice) const {
  return dice.hits(0.3) ? 0 : dice.below(leg_choices_.size());
}

Layout LayoutDrafts::thrown(Dice& dice) const {
  const std::size_t choice = thrown_choice(dice);
  Layout layout{leg_choices_[choice], {}};
  fill(choice, layout.stands, taste_of(dice), dice);
  return layout;
}

void LayoutDrafts::keep_what_fits(std::size_t choice, std::vector<Stand>& stands) const {
  std::vector<Stand> kept;
  for (const Stand& one : stands) {
    if (fits(choice, kept, one)) kept.push_back(one);
  }
  stands = std::move(kept);
}

/// Toward a leg, away from it or anywhere, as far as thrown; it stays where that does not fit.
void LayoutDrafts::move_one(std::size_t choice, std::vector<Stand>& stands, Dice& dice) const {
  const std::size_t i = dice.below(stands.size());
  Stand one = stands[i];
  stands.erase(stands.begin() + static_cast<std::ptrdiff_t>(i));
  for (int tries = 0; tries < tries_at_a_place; ++tries) {
    Stand moved = one;
    const double far_m = 12 * std::pow(dice.part(), 3) + hair_m;
    moved.at = moved.at + direction(Bearing::degrees(dice.between(0, 360))) * far_m;
    if (!fits(choice, stands, moved)) continue;
    one = moved;
    break;
  }
  stands.insert(stands.begin() + static_cast<std::ptrdiff_t>(i), one);
}

void LayoutDrafts::resize_one(std::size_t choice, std::vector<Stand>& stands, Dice& dice) const {
  Stand& one = stands[dice.below(stands.size())];
  one.size = dice.below(task_.brief.bins.size());
  keep_what_fits(choice, stands);
}

Layout LayoutDrafts::varied(const Layout& layout, Dice& dice) const {
  enum Way : std::size_t { move, move_some, resize, drop, add, renew, raise, ways };
  std::size_t choice = choice_of(layout);
  std::vector<Stand> stands = layout.stands;
  const auto way = static_cast<Way>(dice.below(ways));
  const auto drop_one = [&] { stands.erase(stands.begin() + static_cast<std::ptrdiff_t>(dice.below(stands.size()))); };
  if (way == raise) choice = thrown_choice(dice), keep_what_fits(choice, stands);
  if (way == drop && stands.size() > 1) {
    // One, or many: what is left of a large layout is mostly a good small one.
    for (std::size_t gone = dice.hits(0.5) ? 1 : 1 + dice.below(stands.size() - 1); gone > 0; --gone) drop_one();
  }
  if (way == resize) resize_one(choice, stands, dice);
  if (way == renew) {
    for (std::size_t gone = 1 + dice.below(stands.size()); gone > 0; --gone) drop_one();
  }
  if (way == move || way == move_some) {
    for (std::size_t moves = way == move ? 1 : 1 + dice.below(stands.size()); moves > 0; --moves)
      move_one(choice, stands, dice);
  }
  if (way == add || way == renew || way == resize || way == raise || stands.empty())
    fill(choice, stands, taste_of(dice), dice);
  return {leg_choices_[choice], std::move(stands)};
}

}  // namespace yardwright::grow
