#include "geom/grow/single_changes.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "geom/clear/mend.hpp"
#include "geom/grow/effort.hpp"
#include "geom/grow/numbers_of.hpp"
#include "geom/grow/part_of_mend.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

constexpr std::array more_of_it{1.02, 1.1, 1.25, 1.5, 2.0, 3.0};
constexpr double a_little_less = 0.98;
constexpr double exact_part = 0.002;
constexpr double least_part = 0.05;  // of a mend; less of it is not sought
constexpr double turn_step_deg = 15;
constexpr double exact_turn_deg = 0.5;

/// A long spout that is to be drawn wants its support drawn with it.
std::optional<Mend> on_truss(Mend mend) {
  for (Edit& edit : mend.edits) {
    PutItem* put = std::get_if<PutItem>(&edit);
    Spout* spout = put != nullptr ? std::get_if<Spout>(&put->item.thing) : nullptr;
    if (spout == nullptr || spout->supported) continue;
    spout->supported = true;
    mend.action += ", on a truss";
    return mend;
  }
  return std::nullopt;
}

class Singles {
 public:
  Singles(const Prover& prover, KnownReasons& reasons)
      : prover_{prover}, reasons_{reasons}, site_{prover.yard().site} {}

  Found all() {
    for (const Mend& mend : prover_.finding().mends) {
      own(mend);
      if (const auto carried = on_truss(mend)) own(*carried);
    }
    for (const Item& item : things()) {
      if (may_beat(item) && !moved_.contains(item.id)) move(item);
      if (may_beat(item) && asks_for_room()) turn(item);
    }
    std::ranges::stable_sort(found_.harmful, {}, &Change::effort_m);
    return std::move(found_);
  }

 private:
  double effort(const Mend& mend) const { return effort_m(site_, mend, prover_.yard().catalogs.rules); }
  bool asks_for_room() const {
    return prover_.finding().question == Question::clear || prover_.finding().question == Question::turn;
  }

  /// Whether a change of the thing can be worth less than what was found.
  bool may_beat(const Item& item) const {
    const double built_m = item.phase == 0 ? prover_.yard().catalogs.rules.at("grow.effort-built").value : 0;
    return !prover_.stopped() && found_.is_beaten_by(built_m);
  }

  /// What may be moved of what the finding is about; of a spout, what it joins.
  std::vector<Item> things() const {
    std::vector<ItemId> ids = prover_.finding().items;
    for (const ItemId id : prover_.finding().items) {
      const Item* item = find(site_, id);
      if (const Spout* spout = item != nullptr ? as<Spout>(*item) : nullptr) ids.push_back(spout->to);
    }
    std::vector<Item> things;
    std::set<ItemId> seen;
    for (const ItemId id : ids) {
      const Item* item = find(site_, id);
      if (item == nullptr || !seen.insert(id).second || !clear::may_move(*item) || !footprint(item->thing)) continue;
      things.push_back(*item);
    }
    return things;
  }

  void own(const Mend& mend) {
    if (!found_.is_beaten_by(effort(mend)) || prover_.stopped()) return;
    if (prover_.holds(mend.edits)) {
      note_move(mend);
      return found_.offer(lessened(prover_, mend, 1));
    }
    Proof proof = prover_.prove(mend.edits);
    if (proof.mended && !proof.holds()) found_.harmful.push_back({{mend}, effort(mend), std::move(proof.breaks)});
    more_of(mend);
  }

  /// Where the least of it breaks something, a little more may not: a spout raised over a roof.
  void more_of(const Mend& mend) {
    double fails = 1;
    for (const double part : more_of_it) {
      const auto more = part_of(mend, part, site_, site_);
      if (!more || !found_.is_beaten_by(effort(*more)) || prover_.stopped()) return;
      if (prover_.holds(more->edits)) return found_.offer(lessened(prover_, *more, fails / part));
      fails = part;
    }
  }

  /// A thing that its own finding moves without harm needs no other way.
  void note_move(const Mend& mend) {
    for (const Edit& edit : mend.edits) {
      const PutItem* put = std::get_if<PutItem>(&edit);
      const Item* before = put != nullptr ? find(site_, put->item.id) : nullptr;
      if (before != nullptr && place_of(before->thing) != place_of(put->item.thing)) moved_.insert(before->id);
    }
  }

  void move(const Item& item) {
    if (const auto mend = move_into_room(prover_, item, reasons_.of(item, prover_.yard())))
      found_.offer(lessened(prover_, *mend, 0));
  }

  void turn(const Item& item) {
    Thing thing = item.thing;
    const std::vector<Number> numbers = numbers_of(thing);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      if (numbers[i].is_bearing()) turn(item, i);
    }
  }

  Mend turned_by(const Item& item, std::size_t which, double by_deg) const {
    Item there = item;
    const Number number = numbers_of(there.thing)[which];
    number.set(number.value() + by_deg);
    return {"turn the " + std::string{number.field.label} + " of " + title_of(item),
            Quantity::bearing,
            by_deg,
            number.value(),
            {PutItem{there}}};
  }

  void turn(const Item& item, std::size_t which) {
    for (double turn_deg = turn_step_deg; turn_deg <= 180; turn_deg += turn_step_deg) {
      for (const double by_deg : {turn_deg, -turn_deg}) {
        const Mend mend = turned_by(item, which, by_deg);
        if (!found_.is_beaten_by(effort(mend)) || prover_.stopped()) return;
        if (!prover_.mends(mend.edits) || !prover_.holds(mend.edits)) continue;
        const Mend least = least_turn(item, which, by_deg);
        return found_.offer({{least}, effort(least), {}});
      }
    }
  }

  Mend least_turn(const Item& item, std::size_t which, double by_deg) const {
    double fails_deg = by_deg > 0 ? by_deg - turn_step_deg : by_deg + turn_step_deg;
    while (std::abs(by_deg - fails_deg) > exact_turn_deg && !prover_.stopped()) {
      const double middle_deg = (by_deg + fails_deg) / 2;
      (prover_.holds(turned_by(item, which, middle_deg).edits) ? by_deg : fails_deg) = middle_deg;
    }
    return turned_by(item, which, by_deg);
  }

  const Prover& prover_;
  KnownReasons& reasons_;
  const Site& site_;
  Found found_;
  std::set<ItemId> moved_;  ///< by its own finding
};

}  // namespace

Change lessened(const Prover& prover, const Mend& mend, double fails_part) {
  const Site& site = prover.yard().site;
  Mend least = mend;
  double holds_part = 1;
  const auto holds = [&](double part) {
    auto some = part_of(mend, part, site, site);
    if (!some || !prover.holds(some->edits)) return false;
    least = std::move(*some);
    holds_part = part;
    return true;
  };
  if (fails_part < 1 && holds(least_part)) return {{least}, effort_m(site, least, prover.yard().catalogs.rules), {}};
  fails_part = std::max(fails_part, least_part);
  do {
    while (holds_part - fails_part > exact_part * holds_part && !prover.stopped()) {
      const double middle = (holds_part + fails_part) / 2;
      if (!holds(middle)) fails_part = middle;
    }
    fails_part = least_part;
  } while (!prover.stopped() && holds_part > least_part / a_little_less &&
           holds(a_little_less * holds_part));  // below what fails it may hold again
  return {{least}, effort_m(site, least, prover.yard().catalogs.rules), {}};
}

Found single_changes(const Prover& prover, KnownReasons& reasons) { return Singles{prover, reasons}.all(); }

}  // namespace yardwright::grow
