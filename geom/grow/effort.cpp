#include "geom/grow/effort.hpp"

#include <algorithm>
#include <cmath>

#include "geom/grow/numbers_of.hpp"
#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

/// What differs between a thing and the same thing changed.
struct Differences {
  double moved_m = 0;     ///< the farthest of its corners, where it is moved or faces another way
  double turned_deg = 0;  ///< of what looks out of it: a fan, a tube
  double sizes_m = 0;
  bool others = false;  ///< choices, counts, corners more or less
};

double reach_of_corners_m(const Thing& thing) {
  const auto outline = footprint(thing);
  if (!outline) return 0;
  const Box box = box_of(*outline);
  return distance(box.low, box.high) / 2;
}

Differences differences(Thing before, Thing after) {
  Differences found;
  const std::vector<Number> from = numbers_of(before), to = numbers_of(after);
  if (from.size() != to.size()) return {0, 0, 0, true};
  for (std::size_t i = 0; i < from.size(); ++i) {
    const double by = std::abs(difference(from[i], to[i]));
    if (from[i].is_place) {
      const double other = std::abs(difference(from[i + 1], to[i + 1]));
      found.moved_m = std::max(found.moved_m, std::hypot(by, other));
      ++i;
    } else if (from[i].field.key == "facing") {
      found.moved_m += Angle::degrees(by).as_radians() * reach_of_corners_m(before);
    } else if (from[i].is_bearing()) {
      found.turned_deg += by;
    } else {
      found.sizes_m += by;
    }
  }
  for (std::size_t i = 0; i < to.size(); ++i) to[i].set(from[i].value());
  found.others = before != after;
  return found;
}

class Judge {
 public:
  Judge(const Site& site, const Mend& mend, const RuleBook& rules) : site_{site}, mend_{mend}, rules_{rules} {}

  double of(const Edit& edit) const {
    const PutItem* put = std::get_if<PutItem>(&edit);
    if (put == nullptr) return rule("part");
    const Item* before = find(site_, put->item.id);
    return before == nullptr ? of_new(put->item) : of_change(*before, put->item);
  }

 private:
  double rule(const std::string& what) const { return rules_.at("grow.effort-" + what).value; }

  double of_new(const Item& item) const {
    if (as<Pad>(item) != nullptr) return rule("pad") * std::abs(mend_.change);
    if (const Spout* spout = as<Spout>(item)) return rule("part") * (spout->supported ? 2 : 1);
    const SitePath* path = path_of(item.thing);
    return path != nullptr ? rule("earth") * length(*path) : rule("part");
  }

  /// A truck's way is a line on paper; what stands today must be taken down first.
  double of_change(const Item& before, const Item& after) const {
    const Differences by = differences(before.thing, after.thing);
    if (as<Route>(before) != nullptr)
      return rule("way") * (by.others ? std::abs(mend_.change) : by.moved_m + by.sizes_m);
    const double a_size = rule(as<Leg>(before) != nullptr ? "leg" : "size");
    return (before.phase == 0 ? rule("built") : 0) + by.moved_m + rule("turn") * by.turned_deg / 90 +
           a_size * by.sizes_m + (by.others ? rule("part") : 0);
  }

  const Site& site_;
  const Mend& mend_;
  const RuleBook& rules_;
};

}  // namespace

double effort_m(const Site& site, const Mend& mend, const RuleBook& rules) {
  const Judge judge{site, mend, rules};
  double sum_m = 0;
  for (const Edit& edit : mend.edits) sum_m += judge.of(edit);
  return sum_m;
}

}  // namespace yardwright::grow
