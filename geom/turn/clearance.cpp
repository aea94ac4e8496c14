#include "geom/turn/clearance.hpp"

#include <algorithm>
#include <limits>

#include "geom/turn/box_distance.hpp"

namespace yardwright::turn {

namespace {

constexpr double nowhere_m = std::numeric_limits<double>::infinity();
/// Halvings of the stations about the tightest pose: 0.25 m to under a millimetre.
constexpr int refining_steps = 12;

constexpr std::size_t stations_in_stretch = 16;

/// No point of the box is nearer to the obstacle than this.
double at_least_m(const PlacedBox& box, const Box& bounds) {
  return gap_m({box.centre, box.centre}, bounds) - box.reach_m();
}

/// Around the bodies at the stations of one stretch.
Box box_of_stretch(const Driven& driven, const std::vector<Body>& bodies, std::size_t first, std::size_t end) {
  std::vector<SitePoint> points;
  for (std::size_t station = first; station < end; ++station) {
    for (const Body& body : bodies) {
      const auto around = corners(body, driven.pose(station, body.unit));
      points.insert(points.end(), around.begin(), around.end());
    }
  }
  return box_of(points);
}

struct Tightest {
  std::size_t station = 0;
  const Body* body = nullptr;
  NearestPair pair{{}, {}, nowhere_m};
};

template <class Measure>
void search_stretch(Tightest& best, const Driven& driven, const Passage& passage, std::size_t stretch,
                    const Box& bounds, Measure measure) {
  const std::size_t first = stretch * stations_in_stretch,
                    end = std::min(first + stations_in_stretch, driven.stations());
  for (std::size_t station = first; station < end && best.pair.distance_m > 0; ++station) {
    for (const Body& body : passage.bodies) {
      const PlacedBox box = placed(body, driven.pose(station, body.unit));
      if (at_least_m(box, bounds) >= best.pair.distance_m) continue;
      const NearestPair pair = measure(box);
      if (pair.distance_m < best.pair.distance_m) best = {station, &body, pair};
    }
  }
}

/// The nearest stretch first; most of the others are then farther than what it found.
template <class Measure>
Tightest tightest_station(const Driven& driven, const Passage& passage, const Box& bounds, Measure measure) {
  Tightest best;
  const auto nearest =
      std::ranges::min_element(passage.stretches, {}, [&](const Box& box) { return gap_m(box, bounds); });
  if (nearest == passage.stretches.end()) return best;
  search_stretch(best, driven, passage, static_cast<std::size_t>(nearest - passage.stretches.begin()), bounds, measure);
  for (std::size_t stretch = 0; stretch < passage.stretches.size(); ++stretch) {
    if (gap_m(passage.stretches[stretch], bounds) < best.pair.distance_m)
      search_stretch(best, driven, passage, stretch, bounds, measure);
  }
  return best;
}

/// A pose between two stations, by a station number with a fraction.
UnitPose pose_at(const Driven& driven, std::size_t unit, double station) {
  const auto before = std::min(static_cast<std::size_t>(station), driven.stations() - 2);
  return between(driven.pose(before, unit), driven.pose(before + 1, unit), station - static_cast<double>(before));
}

double station_m(const Driven& driven, double station) {
  const auto before = std::min(static_cast<std::size_t>(station), driven.stations() - 2);
  const double part = station - static_cast<double>(before);
  return driven.stations_m[before] * (1 - part) + driven.stations_m[before + 1] * part;
}

/// Closes in on the tightest pose of one body between the stations beside it.
template <class Measure>
Clearance refined(const Driven& driven, const Tightest& tightest, Measure measure) {
  Clearance best{tightest.pair.distance_m, tightest.pair.a, tightest.pair.b, driven.stations_m[tightest.station],
                 tightest.body->unit};
  double at = static_cast<double>(tightest.station), reach = 0.5;
  const double last = static_cast<double>(driven.stations() - 1);
  for (int i = 0; i < refining_steps && best.distance_m > 0; ++i, reach /= 2) {
    for (const double tried : {std::max(0.0, at - reach), std::min(last, at + reach)}) {
      const NearestPair pair = measure(placed(*tightest.body, pose_at(driven, tightest.body->unit, tried)));
      if (pair.distance_m >= best.distance_m) continue;
      best = {pair.distance_m, pair.a, pair.b, station_m(driven, tried), tightest.body->unit};
      at = tried;
    }
  }
  return best;
}

template <class Measure>
Clearance least(const Driven& driven, const Passage& passage, const Box& bounds, Measure measure) {
  const Tightest tightest = tightest_station(driven, passage, bounds, measure);
  if (tightest.body == nullptr) return {nowhere_m, {}, {}, 0, 0};
  return refined(driven, tightest, measure);
}

}  // namespace

Passage passage_of(const Driven& driven, std::vector<Body> bodies) {
  Passage passage{std::move(bodies), {}};
  if (passage.bodies.empty()) return passage;
  for (std::size_t first = 0; first < driven.stations(); first += stations_in_stretch) {
    // to the first station of the next, so that the poses between lie in it too
    const std::size_t end = std::min(first + stations_in_stretch + 1, driven.stations());
    passage.stretches.push_back(box_of_stretch(driven, passage.bodies, first, end));
  }
  return passage;
}

Clearance least_clearance(const Driven& driven, const Passage& passage, const Outline& outline) {
  const Box bounds = box_of(outline);
  if (const Disc* disc = std::get_if<Disc>(&outline)) {
    return least(driven, passage, bounds, [disc](const PlacedBox& box) { return nearest_pair(box, *disc); });
  }
  const std::vector<SitePoint>& ring = std::get<Polygon>(outline).outer;
  return least(driven, passage, bounds, [&ring](const PlacedBox& box) { return nearest_pair(box, ring); });
}

Clearance least_clearance(const Driven& driven, const Passage& passage, const SitePath& line) {
  return least(driven, passage, box_of(line),
               [&line](const PlacedBox& box) { return nearest_pair_to_line(box, line); });
}

Ring ring_about(const Driven& driven, const std::vector<Body>& bodies, SitePoint centre) {
  Ring ring{least_clearance(driven, passage_of(driven, bodies), Outline{Disc{centre, 0}}).distance_m, 0};
  for (std::size_t station = 0; station < driven.stations(); ++station) {
    for (const Body& body : bodies) {
      for (const SitePoint corner : corners(body, driven.pose(station, body.unit))) {
        ring.outer_m = std::max(ring.outer_m, distance(corner, centre));
      }
    }
  }
  return ring;
}

}  // namespace yardwright::turn
