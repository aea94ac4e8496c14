#include "geom/grow/part_of_mend.hpp"

#include <algorithm>

#include "geom/grow/numbers_of.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

/// Whether all that differs are numbers, and some do.
bool differ_in_numbers(Thing before, Thing after) {
  if (before == after || before.index() != after.index()) return false;
  const std::vector<Number> from = numbers_of(before), to = numbers_of(after);
  if (from.size() != to.size()) return false;
  for (std::size_t i = 0; i < to.size(); ++i) to[i].set(from[i].value());
  return before == after;
}

/// Drives are graded or not; pipes, and larger bins, come in sizes.
bool is_sold_in_sizes(const Thing& before, const Thing& after) {
  if (std::holds_alternative<TileLine>(before) || std::holds_alternative<Drive>(before)) return true;
  const Bin *bin = std::get_if<Bin>(&before), *other = std::get_if<Bin>(&after);
  return bin != nullptr && (other->diameter_m != bin->diameter_m || other->eave_height_m > bin->eave_height_m);
}

bool put_comes_in_parts(const Site& site, const Item& put) {
  const Item* before = find(site, put.id);
  if (before == nullptr) return as<Pad>(put) != nullptr;
  return differ_in_numbers(before->thing, put.thing) && !is_sold_in_sizes(before->thing, put.thing);
}

std::optional<Thing> gone_part(Thing now, Thing before, Thing after, double part) {
  const std::vector<Number> at = numbers_of(now), from = numbers_of(before), to = numbers_of(after);
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double by = difference(from[i], to[i]) * part;
    if (by == 0) continue;
    const double value = part == 1 && at[i].value() == from[i].value() ? to[i].value() : at[i].value() + by;
    if (!at[i].allows(value)) return std::nullopt;
    at[i].set(value);
  }
  return now;
}

/// `amount` is what the mend changes, from the ground or from what stands.
std::optional<Item> part_of_put(Item put, double part, double amount, const Site& site, const Site& onto) {
  const Item *before = find(site, put.id), *now = find(onto, put.id);
  if (before == nullptr) {
    std::get<Pad>(put.thing).level_m -= amount * (1 - part);
    return put;
  }
  if (now == nullptr || now->thing.index() != put.thing.index()) return std::nullopt;
  auto thing = gone_part(now->thing, before->thing, put.thing, part);
  if (!thing) return std::nullopt;
  Item changed = *now;
  changed.thing = std::move(*thing);
  return changed;
}

bool moves(const Site& site, const Item& put) {
  const Item* before = find(site, put.id);
  return before != nullptr && place_of(before->thing) != place_of(put.thing);
}

}  // namespace

bool comes_in_parts(const Site& site, const Mend& mend) {
  return !mend.edits.empty() && std::ranges::all_of(mend.edits, [&](const Edit& edit) {
    const PutItem* put = std::get_if<PutItem>(&edit);
    return put != nullptr && put_comes_in_parts(site, put->item);
  });
}

std::optional<Mend> part_of(const Mend& mend, double part, const Site& site, const Site& onto) {
  if (!comes_in_parts(site, mend)) return std::nullopt;
  Mend some = mend;
  some.change = mend.change * part;
  const bool is_move = moves(site, std::get<PutItem>(mend.edits.front()).item);
  if (is_move || mend.becomes == mend.change)
    some.becomes = part == 1 ? mend.becomes : some.change;
  else
    some.becomes = mend.becomes - mend.change + some.change;
  for (Edit& edit : some.edits) {
    auto item = part_of_put(std::get<PutItem>(edit).item, part, mend.change, site, onto);
    if (!item) return std::nullopt;
    edit = PutItem{std::move(*item)};
  }
  return some;
}

}  // namespace yardwright::grow
