#include "geom/grow/packing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>

#include "geom/shape/innermost.hpp"
#include "geom/shape/spread.hpp"

namespace yardwright::grow {

namespace {

using Places = std::vector<SitePoint>;

constexpr double hair_m = 1e-6;

/// The way out of the conflict, from a place at its middle to one at an offset; zero where there is none.
class Conflict {
 public:
  explicit Conflict(const Region& region) : region_{region} {
    for (const Polygon& polygon : region) {
      for (const SitePoint& corner : polygon.outer) farthest_m_ = std::max(farthest_m_, distance(corner, {}));
    }
    nearest_m_ = std::max(0.0, depth_within_m(region, {}));
    constexpr double round_ratio = 0.001;
    round_ = region.size() == 1 && farthest_m_ - nearest_m_ < round_ratio * nearest_m_;
  }

  /// Two places farther apart are in no conflict; two nearer than `nearest_m` are in one.
  double farthest_m() const { return farthest_m_; }
  double nearest_m() const { return nearest_m_; }

  SiteVector way_out(SiteVector offset) const {
    const double apart_m = length(offset);
    if (apart_m >= farthest_m_) return {};
    if (round_ && apart_m > 0) return offset * ((farthest_m_ - apart_m) / apart_m);
    const SitePoint at = SitePoint{} + offset;
    if (!holds(region_, at)) return {};
    return nearest_edge(region_, at).b - at;
  }

 private:
  const Region& region_;
  double farthest_m_ = 0, nearest_m_ = 0;
  bool round_ = false;
};

class Packer {
 public:
  Packer(const PackingTask& task, const PackingEffort& effort)
      : region_{task.region}, conflict_{task.conflict}, effort_{effort}, random_{effort.seed} {
    box_ = task.region.empty() ? Box{} : box_of(task.region.front().outer);
    for (const Polygon& part : task.region) {
      const Box one = box_of(part.outer);
      box_ = {{std::min(box_.low.x, one.low.x), std::min(box_.low.y, one.low.y)},
              {std::max(box_.high.x, one.high.x), std::max(box_.high.y, one.high.y)}};
    }
  }

  Places pack() {
    Places best = on_lattices();
    tell(best);
    for (int tries = 0; tries < effort_.tries && !effort_.stop.stop_requested(); ++tries) {
      Places more = tries % 2 == 0 ? with_one_more(best) : thrown(best.size() + 1);
      if (more.size() != best.size() + 1 || !push_apart(more)) continue;
      best = std::move(more);
      tell(best);
      tries = -1;
    }
    return best;
  }

 private:
  void tell(const Places& places) const {
    if (effort_.found) effort_.found(places.size());
  }

  double between(double low, double high) { return std::uniform_real_distribution{low, high}(random_); }

  bool fits(const Places& places, SitePoint at) const {
    return depth_within_m(region_, at) >= 0 &&
           std::ranges::none_of(places, [&](SitePoint other) { return conflict_.way_out(at - other) != SiteVector{}; });
  }

  /// One by one in the order of a lattice's rows, wherever it still fits.
  Places filled(SitePoint origin, SiteVector along, double step_m) const {
    Places places;
    const SiteVector up = left_of(along);
    const double reach_m = distance(box_.low, box_.high);
    const int rows = static_cast<int>(std::ceil(reach_m / (step_m * std::numbers::sqrt3 / 2)));
    const int across = static_cast<int>(std::ceil(reach_m / step_m));
    for (int row = -rows; row <= rows; ++row) {
      for (int column = -across; column <= across; ++column) {
        const double shift = row % 2 == 0 ? 0 : 0.5;
        const SitePoint at =
            origin + along * ((column + shift) * step_m) + up * (row * step_m * std::numbers::sqrt3 / 2);
        if (fits(places, at)) places.push_back(at);
      }
    }
    return places;
  }

  Places on_lattices() {
    constexpr int lattices = 24;
    Places best;
    const double step_m = conflict_.nearest_m() + hair_m;
    if (region_.empty() || step_m <= 0.1) return best;
    for (int i = 0; i < lattices && !effort_.stop.stop_requested(); ++i) {
      const SitePoint origin{between(box_.low.x, box_.high.x), between(box_.low.y, box_.high.y)};
      const double fine_m = i % 3 == 0 ? step_m / 4 : step_m;
      Places found = filled(origin, direction(Bearing::degrees(between(0, 180))), fine_m);
      if (found.size() > best.size()) best = std::move(found);
    }
    return best;
  }

  std::optional<SitePoint> thrown_place() {
    for (int i = 0; i < 2000; ++i) {
      const SitePoint at{between(box_.low.x, box_.high.x), between(box_.low.y, box_.high.y)};
      if (holds(region_, at)) return at;
    }
    return std::nullopt;
  }

  Places thrown(std::size_t count) {
    Places places;
    while (places.size() < count) {
      const auto at = thrown_place();
      if (!at) break;
      places.push_back(*at);
    }
    return places;
  }

  /// One thrown among them, and some of them thrown anew.
  Places with_one_more(Places places) {
    const double stir_m = conflict_.farthest_m() * between(0, 0.5);
    for (SitePoint& place : places) place = place + SiteVector{between(-stir_m, stir_m), between(-stir_m, stir_m)};
    if (const auto at = thrown_place()) places.push_back(*at);
    return places;
  }

  /// Every one by half of each conflict that it has, and back into the region; a little more than is needed, so that it ends.
  bool push_apart(Places& places) const {
    constexpr int rounds = 600;
    constexpr double over = 1.02;
    std::vector<SiteVector> pushes(places.size());
    for (int round = 0; round < rounds && !effort_.stop.stop_requested(); ++round) {
      std::ranges::fill(pushes, SiteVector{});
      bool apart = true;
      for (std::size_t i = 0; i < places.size(); ++i) {
        for (std::size_t j = i + 1; j < places.size(); ++j) {
          const SiteVector way = conflict_.way_out(places[j] - places[i]);
          if (way == SiteVector{}) continue;
          apart = false;
          pushes[j] = pushes[j] + way * (over / 2) + unit(way) * (10 * hair_m);
          pushes[i] = pushes[i] - way * (over / 2) - unit(way) * (10 * hair_m);
        }
      }
      if (apart) return true;
      for (std::size_t i = 0; i < places.size(); ++i) places[i] = within(places[i] + pushes[i]);
    }
    return false;
  }

  SitePoint within(SitePoint at) const {
    if (holds(region_, at)) return at;
    const SitePoint edge = nearest_edge(region_, at).b;
    const SitePoint inside = edge + unit(edge - at) * hair_m;
    return holds(region_, inside) ? inside : edge;
  }

  const Region& region_;
  Conflict conflict_;
  const PackingEffort& effort_;
  std::mt19937 random_;
  Box box_;
};

double perimeter_m(const Polygon& polygon) {
  SitePath ring = polygon.outer;
  ring.push_back(ring.front());
  return length(ring);
}

/// Discs of this diameter around the places do not overlap, and lie within the region grown by half of it.
double by_area(const Region& region, double apart_m) {
  const double disc_m2 = std::numbers::pi * apart_m * apart_m / 4;
  return area_m2(offset(region, apart_m / 2, 180)) / disc_m2;
}

double by_oler(const Region& region, double apart_m) {
  double sum = 0;
  for (const Polygon& part : region) {
    const Polygon hull = hull_of(part.outer);
    sum += 2 / std::numbers::sqrt3 * area_m2(hull) / (apart_m * apart_m) + perimeter_m(hull) / (2 * apart_m) + 1;
  }
  return sum;
}

}  // namespace

std::vector<SitePoint> packed(const PackingTask& task, const PackingEffort& effort) {
  if (task.region.empty() || task.conflict.empty()) return {};
  return Packer{task, effort}.pack();
}

int most_places(const PackingTask& task) {
  if (task.region.empty()) return 0;
  const double apart_m = Conflict{task.conflict}.nearest_m();
  if (apart_m <= 0) return std::numeric_limits<int>::max();
  return static_cast<int>(std::floor(std::min(by_area(task.region, apart_m), by_oler(task.region, apart_m)) + hair_m));
}

}  // namespace yardwright::grow
