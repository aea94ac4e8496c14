#include "geom/sheet/label_placing.hpp"

#include <algorithm>

#include "geom/sheet/paper_obstacle.hpp"

namespace yardwright {

namespace {

constexpr double over_label = 100;  ///< cost of covering another label: more than any leader
constexpr double over_window = 200;
constexpr double names_another = 4;  ///< times what crossing its edge costs: words inside a thing are read as its own
constexpr double too_much = 5;       ///< above this a label is left out that may be
constexpr int rounds = 3;            ///< the first places, the others improve

class Placing {
 public:
  Placing(const std::vector<Label>& labels, const std::vector<Obstacle>& obstacles, const LabelPaper& paper)
      : labels_{labels}, paper_{paper}, placed_(labels.size()) {
    for (const Obstacle& obstacle : obstacles) {
      const SitePath* path = std::get_if<SitePath>(&obstacle.shape);
      if (path == nullptr || !path->empty()) obstacles_.push_back(on_paper(obstacle, paper.metres_per_mm));
    }
  }

  std::vector<PlacedLabel> run() {
    for (int round = 0; round < rounds; ++round) {
      bool moved = false;
      for (std::size_t i = 0; i < labels_.size(); ++i) moved = place(i) || moved;
      if (!moved) break;
    }
    return placed_;
  }

 private:
  /// Whether it has come to stand elsewhere.
  bool place(std::size_t which) {
    const Label& label = labels_[which];
    const LabelSpot* before = placed_[which].spot;
    placed_[which].spot = nullptr;  // it does not stand in its own way
    double least = label.may_be_left_out ? too_much : 1e18;
    PlacedLabel best;
    for (const LabelSpot& spot : label.spots) {
      if (spot.cost >= least) break;
      if (!shows(spot.at)) continue;
      const PlacedLabel here = at_spot(label, spot);
      const double cost = spot.cost + cost_of(label, here, least - spot.cost);
      if (cost < least) {
        least = cost;
        best = here;
      }
    }
    placed_[which] = best;
    return best.spot != before;
  }

  PlacedLabel at_spot(const Label& label, const LabelSpot& spot) const {
    const PaperPoint middle = on_paper(spot.at, paper_.metres_per_mm) + spot.offset_mm;
    const LabelSize size = size_of(label, spot.size);
    PlacedLabel here{&spot, label_box(middle, size.width_mm, size.height_mm, spot.turn_deg), {}};
    const PaperPoint named = on_paper(label.names, paper_.metres_per_mm);
    here.leader_end = named + unit(middle - named) * label.names_radius_mm;
    return here;
  }

  /// Stops adding up once it is more than `enough`.
  double cost_of(const Label& label, const PlacedLabel& here, double enough) const {
    double cost = outside_window(here.box);
    for (const PlacedLabel& other : placed_) {
      if (other.spot == nullptr) continue;
      if (cost >= enough) return cost;
      if (meet(here.box, other.box)) cost += over_label;
      if (here.spot->leader && crosses(other.box, here.leader_end, here.box.middle)) cost += over_label / 2;
      if (other.spot->leader && crosses(here.box, other.leader_end, other.box.middle)) cost += over_label / 2;
    }
    for (const PaperObstacle& obstacle : obstacles_) {
      if (cost >= enough) return cost;
      cost += cost_against(label, here.box, obstacle);
    }
    return cost;
  }

  /// What lies outside the window is not drawn and needs no name.
  bool shows(SitePoint at) const {
    if (!paper_.window) return true;
    const Box& window = *paper_.window;
    return at.x >= window.low.x && at.x <= window.high.x && at.y >= window.low.y && at.y <= window.high.y;
  }

  static double cost_against(const Label& label, const LabelBox& box, const PaperObstacle& obstacle) {
    if (!is_near(box, obstacle)) return 0;
    const bool own = obstacle.owner == label.owner && label.owner != ItemId{};
    if (obstacle.solid && !own && lies_in(box, obstacle)) return names_another * obstacle.weight;
    return crosses_edge(box, obstacle) ? obstacle.weight : 0;
  }

  double outside_window(const LabelBox& box) const {
    if (!paper_.window) return 0;
    const PaperPoint a = on_paper(paper_.window->low, paper_.metres_per_mm),
                     b = on_paper(paper_.window->high, paper_.metres_per_mm);
    const auto outside = [&](PaperPoint p) { return p.x < a.x || p.x > b.x || p.y > a.y || p.y < b.y; };
    return std::ranges::any_of(box.corners(), outside) ? over_window : 0;
  }

  const std::vector<Label>& labels_;
  LabelPaper paper_;
  std::vector<PaperObstacle> obstacles_;
  std::vector<PlacedLabel> placed_;
};

}  // namespace

std::vector<PlacedLabel> place_labels(const std::vector<Label>& labels, const std::vector<Obstacle>& obstacles,
                                      const LabelPaper& paper) {
  return Placing{labels, obstacles, paper}.run();
}

}  // namespace yardwright
