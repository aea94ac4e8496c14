#include "geom/clear/mend.hpp"

#include <algorithm>

#include "geom/clear/spacing.hpp"

namespace yardwright::clear {

namespace {

constexpr double farthest_move_m = 150.0;
constexpr double lowest_eave_m = 2.0;    // a bin lower than this is no mend
constexpr double step_ratio = 1.3;       // between moves that are tried in a direction that is not straight away
constexpr double close_enough_m = 1e-3;  // to the least move in such a direction

/// The yard with one thing changed, and whether that thing then keeps the rule and stands on nothing else.
class Trial {
 public:
  Trial(const Item& item, const Check& check, const Yard& yard)
      : item_{item}, check_{check}, overlap_{overlap_check(yard.rules)}, yard_{yard} {
    solid_ = std::ranges::find_if(yard_.solids, [&](const Solid& s) { return s.item->id == item.id; });
  }
  Trial(const Trial&) = delete;
  Trial& operator=(const Trial&) = delete;

  bool passes(Thing thing) {
    item_.thing = std::move(thing);
    *solid_ = *solid_of(item_);
    return !check_.tightest(*solid_, yard_, -hair_m) && !overlap_.tightest(*solid_, yard_, -hair_m);
  }

 private:
  Item item_;
  const Check& check_;
  Check overlap_;
  Yard yard_;
  std::vector<Solid>::iterator solid_;
};

struct Move {
  SiteVector way;
  double by_m = farthest_move_m;
  double fails_m = 0;  ///< a shorter move that does not pass
};

/// Between a move that fails and one that passes.
double least_pass_m(Trial& trial, const Thing& thing, SiteVector way, double fails_m, double passes_m) {
  while (passes_m - fails_m > close_enough_m) {
    const double middle_m = (fails_m + passes_m) / 2;
    (trial.passes(moved(thing, way * middle_m)) ? passes_m : fails_m) = middle_m;
  }
  return passes_m;
}

/// Other ways than straight away, for things that stand between others.
std::optional<Move> move_around(Trial& trial, const Thing& thing, SiteVector away, double short_m) {
  std::optional<Move> best;
  for (int turn_deg = 0; turn_deg < 360; turn_deg += 30) {
    const SitePoint turned_to = turned(SitePoint{away.x, away.y}, {}, Angle::degrees(turn_deg));
    const SiteVector way{turned_to.x, turned_to.y};
    double fails_m = 0;
    for (double by_m = std::max(short_m, 0.1); by_m < (best ? best->by_m : farthest_move_m); by_m *= step_ratio) {
      if (!trial.passes(moved(thing, way * by_m))) {
        fails_m = by_m;
        continue;
      }
      best = Move{way, by_m, fails_m};
      break;
    }
  }
  if (best) best->by_m = least_pass_m(trial, thing, best->way, best->fails_m, best->by_m);
  return best;
}

/// No move can be shorter than what is short, since a distance changes by no more than the move: straight away by
/// that much is the least where it passes.
std::optional<Move> least_move(Trial& trial, const Thing& thing, SiteVector away, double short_m) {
  const double least_m = short_m + hair_m;
  if (away != SiteVector{} && trial.passes(moved(thing, away * least_m))) return Move{away, least_m, short_m};
  return move_around(trial, thing, away == SiteVector{} ? SiteVector{0, 1} : away, short_m);
}

std::optional<Mend> moving(const Item& item, SiteVector away, const Gap& gap, const Check& check, const Yard& yard) {
  if (!may_move(item)) return std::nullopt;
  Trial trial{item, check, yard};
  const auto move = least_move(trial, item.thing, unit(away), -gap.margin_m());
  if (!move) return std::nullopt;
  Item there = item;
  there.thing = moved(item.thing, move->way * move->by_m);
  return Mend{"move " + title_of(item), Quantity::length, move->by_m, gap.required_m, {PutItem{there}}};
}

void add_moves(std::vector<Mend>& mends, const Gap& gap, const Check& check, const Yard& yard) {
  struct Mover {
    const Item* item;
    SiteVector away;
  };
  std::vector<Mover> movers{{find(yard.site, gap.of), gap.pair.a - gap.pair.b},
                            {find(yard.site, gap.to), gap.pair.b - gap.pair.a}};
  std::erase_if(movers, [](const Mover& one) { return one.item == nullptr || !solid_of(*one.item); });
  std::ranges::stable_sort(movers, std::greater{}, [](const Mover& one) { return one.item->phase; });
  for (const Mover& one : movers) {
    if (const auto mend = moving(*one.item, one.away, gap, check, yard)) mends.push_back(*mend);
  }
}

/// A lower bin has a lower port, and a lower port lets a line come nearer.
void add_lower_eave(std::vector<Mend>& mends, const Item& item, const Check& check, const Yard& yard) {
  const Bin* bin = as<Bin>(item);
  if (bin == nullptr || bin->eave_height_m <= lowest_eave_m) return;
  Trial trial{item, check, yard};
  const auto at_eave = [&](double eave_m) {
    Bin lower = *bin;
    lower.eave_height_m = eave_m;
    return lower;
  };
  double passes_m = lowest_eave_m, fails_m = bin->eave_height_m;
  if (!trial.passes(at_eave(passes_m))) return;
  while (fails_m - passes_m > hair_m) {
    const double middle_m = (passes_m + fails_m) / 2;
    (trial.passes(at_eave(middle_m)) ? passes_m : fails_m) = middle_m;
  }
  Item lower = item;
  lower.thing = at_eave(passes_m);
  mends.push_back({"lower the eave of " + title_of(item),
                   Quantity::length,
                   passes_m - bin->eave_height_m,
                   passes_m,
                   {PutItem{lower}}});
}

/// The least turn of a bin's fan or unload tube, in whole steps, that finds room.
void add_turn(std::vector<Mend>& mends, const Item& item, Bearing Bin::*side, std::string_view what, const Check& check,
              const Yard& yard) {
  const Bin* bin = as<Bin>(item);
  if (bin == nullptr) return;
  Trial trial{item, check, yard};
  for (int turn_deg = 5; turn_deg <= 180; turn_deg += 5) {
    for (const int way : {turn_deg, -turn_deg}) {
      Bin other = *bin;
      other.*side = (bin->*side).turned(Angle::degrees(way));
      if (!trial.passes(other)) continue;
      Item changed = item;
      changed.thing = other;
      mends.push_back({"turn the " + std::string{what} + " of " + title_of(item),
                       Quantity::bearing,
                       static_cast<double>(way),
                       (other.*side).as_degrees(),
                       {PutItem{changed}}});
      return;
    }
  }
}

void add_wider_pit(std::vector<Mend>& mends, const Item& item, const Gap& gap) {
  const Leg* one = as<Leg>(item);
  if (one == nullptr) return;
  Leg wider = *one;
  const double length_m = one->tower_width_m + 2 * gap.required_m;
  wider.boot.length_m = length_m;
  Item changed = item;
  changed.thing = wider;
  mends.push_back({"lengthen the boot pit of " + title_of(item),
                   Quantity::length,
                   length_m - one->boot.length_m,
                   length_m,
                   {PutItem{changed}}});
}

}  // namespace

bool may_move(const Item& item) {
  const Building* building = as<Building>(item);
  return as<Well>(item) == nullptr && (building == nullptr || building->use != BuildingUse::dwelling);
}

std::vector<Mend> mends_for(const Gap& gap, const Check& check, const Yard& yard) {
  std::vector<Mend> mends;
  const Item& item = *find(yard.site, gap.of);
  const std::string_view rule = gap.rule->id;
  if (rule == "clear.boot-room") {
    add_wider_pit(mends, item, gap);
    return mends;
  }
  if (rule == "clear.fan-room") add_turn(mends, item, &Bin::fan_side, "fan side", check, yard);
  if (rule == "clear.unload-room") add_turn(mends, item, &Bin::unload_side, "unload side", check, yard);
  add_moves(mends, gap, check, yard);
  if (rule == "clear.line-portable" || rule == "clear.line-permanent") add_lower_eave(mends, item, check, yard);
  return mends;
}

}  // namespace yardwright::clear
