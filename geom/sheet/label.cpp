#include "geom/sheet/label.hpp"

#include <algorithm>

#include "geom/sheet/label_placing.hpp"
#include "geom/sheet/letter_widths.hpp"
#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

constexpr double line_ratio = 1.3;  ///< height of a line, of its letters' em
constexpr double card_edge_mm = 0.9;

void add_leader(Marks& marks, const Label& label, const PlacedLabel& placed, const LabelPaper& paper) {
  const DrawVector to_origin = DrawPoint{} - on_paper(label.names, paper.metres_per_mm);
  const Colour colour = label.card.value_or(palette::quiet_ink);
  const PaperPoint entry = entry_of(placed.box, placed.leader_end);
  SymbolMark leader{on_plan(label.names),
                    {LineMark{{placed.leader_end + to_origin, entry + to_origin}, {colour, 0.18, {}}, false}}};
  if (!label.card)
    leader.marks.emplace_back(CircleMark{placed.leader_end + to_origin, 0.35, colour, {palette::none, 0, {}}});
  marks.emplace_back(std::move(leader));
}

void add_card(Marks& marks, const Label& label, const PlacedLabel& placed, const LabelPaper& paper) {
  const DrawVector to_origin = DrawPoint{} - on_paper(placed.spot->at, paper.metres_per_mm);
  std::vector<DrawPoint> corners;
  for (const PaperPoint corner : placed.box.corners()) corners.push_back(corner + to_origin);
  marks.push_back(SymbolMark{on_plan(placed.spot->at),
                             {AreaMark{{corners}, palette::card}, LineMark{corners, {*label.card, 0.3, {}}, true}}});
}

void add_lines(Marks& marks, const Label& label, const PlacedLabel& placed) {
  const LabelSpot& spot = *placed.spot;
  const DrawVector down = unit(placed.box.across);
  double y_mm = -size_of(label, spot.size).height_mm / 2 + (label.card ? card_edge_mm / 2 : 0);
  for (const LabelLine& said : label.lines) {
    const double height_mm = said.height_mm * spot.size;
    TextMark text = words(spot.at, said.text, height_mm, said.colour);
    text.bold = said.bold;
    text.halo = label.card ? palette::none : label.halo;
    text.turn_deg = spot.turn_deg;
    text.offset_mm = spot.offset_mm + down * (y_mm + height_mm * line_ratio / 2);
    marks.emplace_back(std::move(text));
    y_mm += height_mm * line_ratio;
  }
}

}  // namespace

LabelSize size_of(const Label& label, double letter_size) {
  LabelSize size;
  for (const LabelLine& line : label.lines) {
    size.width_mm = std::max(size.width_mm, width_of_words_mm(line.text, line.height_mm * letter_size, line.bold));
    size.height_mm += line.height_mm * letter_size * line_ratio;
  }
  if (label.card) size = {size.width_mm + 2 * card_edge_mm, size.height_mm + card_edge_mm};
  return size;
}

std::vector<Mark> placed_labels(const std::vector<Label>& labels, const std::vector<Obstacle>& obstacles,
                                const LabelPaper& paper) {
  Marks leaders, said;
  const auto placed = place_labels(labels, obstacles, paper);
  for (std::size_t i = 0; i < labels.size(); ++i) {
    if (placed[i].spot == nullptr) continue;
    Marks marks;
    if (placed[i].spot->leader) add_leader(leaders, labels[i], placed[i], paper);
    if (labels[i].card) add_card(marks, labels[i], placed[i], paper);
    add_lines(marks, labels[i], placed[i]);
    for (Mark& mark : marks)
      said.push_back(labels[i].strength < 1 ? faded(std::move(mark), labels[i].strength) : std::move(mark));
  }
  for (Mark& mark : said) leaders.push_back(std::move(mark));
  return leaders;
}

}  // namespace yardwright
