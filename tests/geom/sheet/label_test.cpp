#include "geom/sheet/label.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "geom/sheet/cairo_device.hpp"
#include "geom/sheet/label_placing.hpp"
#include "geom/sheet/label_spots.hpp"
#include "geom/sheet/letter_widths.hpp"

using namespace yardwright;

namespace {

constexpr double metres_per_mm = 0.5;

Label label_of_bin(SitePoint at, double radius_m, ItemId id = {1}) {
  Label label;
  label.lines = {{"North 1", 2.5, palette::ink, true}, {"36 ft · 20.7k bu", 2.0}};
  label.owner = id;
  add_spots_around(label, {at, radius_m, radius_m, true}, Prefer::inside, metres_per_mm);
  return label;
}

/// How many of the labels lie on another.
int overlaps(const std::vector<PlacedLabel>& placed) {
  int count = 0;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    for (std::size_t j = i + 1; j < placed.size(); ++j)
      count += placed[i].spot && placed[j].spot && meet(placed[i].box, placed[j].box);
  }
  return count;
}

}  // namespace

TEST_CASE("The table of letter widths is what the font says, within four in a hundred") {
  const TextMeasure measure;
  for (const char* text : {"North 1 · 36 ft", "LP gas 1,000 gal", "continuous dryer", "Machine shed", "905.5 ft"}) {
    INFO(text);
    for (const bool bold : {false, true}) {
      const double true_mm = measure.width_mm(text, 10, bold);
      CHECK(width_of_words_mm(text, 10, bold) == Approx(true_mm).epsilon(0.04));
    }
  }
}

TEST_CASE("A name that fits its bin stands inside it, in the middle") {
  const std::vector<Label> labels{label_of_bin({10, 20}, 12)};
  const auto placed = place_labels(labels, {{Disc{{10, 20}, 12}, 20, true, 0, {1}}}, {metres_per_mm, {}});
  REQUIRE(placed.front().spot != nullptr);
  CHECK(placed.front().spot->offset_mm == DrawVector{0, 0});
  CHECK_FALSE(placed.front().spot->leader);
}

TEST_CASE("A bin too small for its words has them all beside it: no size is dropped") {
  const std::vector<Label> labels{label_of_bin({10, 20}, 2)};
  const auto placed = place_labels(labels, {{Disc{{10, 20}, 2}, 20, true, 0, {1}}}, {metres_per_mm, {}});
  REQUIRE(placed.front().spot != nullptr);
  CHECK(distance_to(placed.front().box, on_paper({10, 20}, metres_per_mm)) >= 2 / metres_per_mm);
  CHECK(placed_labels(labels, {}, {metres_per_mm, {}}).size() == 2);
}

TEST_CASE("Names of bins that crowd stand apart, with leaders where they must") {
  const unsigned seed = GENERATE(1U, 2U, 3U);
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> anywhere{0, 100};
  std::vector<Label> labels;
  std::vector<Obstacle> obstacles;
  for (int i = 1; i <= 40; ++i) {
    const SitePoint at{anywhere(random), anywhere(random)};
    labels.push_back(label_of_bin(at, 3, {i}));
    obstacles.push_back({Disc{at, 3}, 20, true, 0, {i}});
  }
  const auto placed = place_labels(labels, obstacles, {metres_per_mm, {}});
  CHECK(overlaps(placed) == 0);
  CHECK(std::ranges::all_of(placed, [](const PlacedLabel& label) { return label.spot != nullptr; }));
}

TEST_CASE("The same labels give the same places") {
  std::vector<Label> labels;
  for (int i = 1; i <= 12; ++i) labels.push_back(label_of_bin({i * 4.0, 0}, 3, {i}));
  const auto first = place_labels(labels, {}, {metres_per_mm, {}}),
             second = place_labels(labels, {}, {metres_per_mm, {}});
  for (std::size_t i = 0; i < labels.size(); ++i) CHECK(first[i].spot == second[i].spot);
}

TEST_CASE("A contour's level is left out where it would lie on a name, a bin's name is not") {
  Label level = label_of_bin({0, 0}, 0.1);
  level.spots.resize(1);
  level.may_be_left_out = true;
  Label name = level;
  name.may_be_left_out = false;
  const auto placed = place_labels({name, level}, {}, {metres_per_mm, {}});
  CHECK(placed[0].spot != nullptr);
  CHECK(placed[1].spot == nullptr);
}

TEST_CASE("Words stay inside the window where they can") {
  const std::vector<Label> labels{label_of_bin({99, 50}, 2)};
  const Box window{{0, 0}, {100, 100}};
  const auto placed = place_labels(labels, {}, {metres_per_mm, window});
  for (const PaperPoint corner : placed.front().box.corners()) CHECK(corner.x * metres_per_mm <= window.high.x);
}

TEST_CASE("Turned boxes meet where they cross, and not where only their upright boxes do") {
  const LabelBox flat = label_box({0, 0}, 20, 2, 0);
  CHECK(meet(flat, label_box({0, 0}, 20, 2, 90)));
  CHECK(meet(flat, label_box({9, 0}, 20, 2, 45)));
  CHECK_FALSE(meet(label_box({0, 0}, 20, 2, 45), label_box({6, -6}, 4, 2, 0)));
  CHECK(crosses(flat, {0, -5}, {0, 5}));
  CHECK_FALSE(crosses(flat, {11, -5}, {11, 5}));
}
