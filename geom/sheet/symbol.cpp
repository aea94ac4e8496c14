#include "geom/sheet/symbol.hpp"

#include <array>

namespace yardwright {

namespace {

using Points = std::vector<DrawPoint>;
using palette::ink;

const Stroke outline{ink, 0.35, {}};
const Stroke detail{palette::quiet_ink, 0.2, {}};
const Stroke no_edge{palette::none, 0, {}};

LineMark open(Points points, Stroke stroke) { return {std::move(points), std::move(stroke), false}; }
LineMark closed(Points points, Stroke stroke) { return {std::move(points), std::move(stroke), true}; }
AreaMark filled(Points points, Colour fill) { return {{std::move(points)}, fill}; }
CircleMark dot(DrawPoint at, double radius, Colour fill) { return {at, radius, fill, no_edge}; }
CircleMark hoop(DrawPoint at, double radius, Colour fill, Stroke stroke) {
  return {at, radius, fill, std::move(stroke)};
}

Points box(double left, double top, double right, double bottom) {
  return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

/// A smooth wave: `height(x)` sampled from left to right.
template <class Height>
Points curve(double left, double right, Height height, int steps = 24) {
  Points points;
  for (int i = 0; i <= steps; ++i) {
    const double x = left + (right - left) * i / steps;
    points.push_back({x, height(x)});
  }
  return points;
}

/// An arc of an ellipse, degrees from the right hand, clockwise on the paper.
Points arc(DrawPoint centre, double half_width, double half_height, double from_deg, double to_deg) {
  Points points;
  for (int i = 0; i <= 24; ++i) {
    const Angle angle = Angle::degrees(from_deg + (to_deg - from_deg) * i / 24);
    points.push_back({centre.x + half_width * cos(angle), centre.y + half_height * sin(angle)});
  }
  return points;
}

SymbolMarks bin() {
  SymbolMarks marks{hoop({0, 0}, 3.3, palette::steel, outline)};
  for (int i = 0; i < 12; ++i) {
    const Angle angle = Angle::degrees(i * 30.0);
    marks.push_back(open({{0.8 * cos(angle), 0.8 * sin(angle)}, {3.2 * cos(angle), 3.2 * sin(angle)}},
                         {palette::steel_rib, 0.15, {}}));
  }
  marks.push_back(hoop({0, 0}, 0.7, palette::white, detail));
  return marks;
}

SymbolMarks leg() {
  const Stroke spout{palette::reach, 0.4, {}};
  return {open({{-0.6, -1.7}, {-3.3, 1.2}}, spout),
          open({{0.6, -1.7}, {3.3, 1.2}}, spout),
          filled(box(-0.75, -2.4, 0.75, 3.3), palette::white),
          closed(box(-0.75, -2.4, 0.75, 3.3), outline),
          open({{-0.75, 0}, {0.75, 1.2}}, detail),
          open({{-0.75, 1.2}, {0.75, 2.4}}, detail),
          open({{-0.75, -1.2}, {0.75, 0}}, detail),
          filled({{-1.2, -2.4}, {-0.8, -3.5}, {0.8, -3.5}, {1.2, -2.4}}, palette::steel),
          closed({{-1.2, -2.4}, {-0.8, -3.5}, {0.8, -3.5}, {1.2, -2.4}}, outline),
          open({{-2.2, 3.3}, {2.2, 3.3}}, outline)};
}

SymbolMarks dryer() {
  SymbolMarks marks{filled(box(-3.4, -2.1, 3.4, 2.1), Colour{0xf0, 0xdf, 0xd3}),
                    closed(box(-3.4, -2.1, 3.4, 2.1), {palette::fuel, 0.35, {}})};
  for (const double x : {-1.9, 0.0, 1.9}) {
    Points flame;
    for (int i = 0; i <= 12; ++i) flame.push_back({x + 0.4 * sin(Angle::degrees(i * 30.0)), 1.2 - 0.2 * i});
    marks.push_back(open(flame, {palette::fuel, 0.3, {}}));
  }
  return marks;
}

SymbolMarks overhead_holding() {
  const Points hopper{{-2.2, -3.2}, {2.2, -3.2}, {2.2, -0.8}, {0.5, 1.0}, {-0.5, 1.0}, {-2.2, -0.8}};
  return {open({{-2.2, -0.8}, {-2.2, 3.4}}, outline),
          open({{2.2, -0.8}, {2.2, 3.4}}, outline),
          open({{-2.2, 1.4}, {2.2, 3.0}}, detail),
          open({{2.2, 1.4}, {-2.2, 3.0}}, detail),
          filled(hopper, palette::steel),
          closed(hopper, outline),
          open({{-2.2, -0.8}, {2.2, -0.8}}, detail),
          open({{-3.3, 3.4}, {3.3, 3.4}}, detail)};
}

SymbolMarks receiving() {
  const Points shed{{-3.3, 1.2}, {-3.3, -1.6}, {0, -3.2}, {3.3, -1.6}, {3.3, 1.2}};
  return {filled(shed, palette::timber),
          open(shed, outline),
          filled(box(-1.8, -1.0, 1.8, 1.2), palette::paper),
          open({{-1.8, 1.2}, {-1.8, -1.0}, {1.8, -1.0}, {1.8, 1.2}}, detail),
          open({{-3.6, 1.2}, {3.6, 1.2}}, outline),
          open({{-1.6, 1.2}, {-0.5, 3.3}, {0.5, 3.3}, {1.6, 1.2}}, {ink, 0.25, {0.7, 0.5}})};
}

SymbolMarks conveyor() {
  return {open({{-3.3, 2.2}, {2.7, -2.4}}, outline), open({{-2.7, 3.0}, {3.3, -1.6}}, outline),
          hoop({-3.0, 2.6}, 0.5, palette::white, outline), hoop({3.0, -2.0}, 0.5, palette::white, outline),
          open({{-0.6, -0.9}, {0.4, 0.0}, {0.3, 1.2}}, {palette::quiet_ink, 0.25, {}})};
}

SymbolMarks spout() {
  return {open({{-2.6, -2.6}, {2.4, 2.4}}, {palette::reach, 0.7, {}}), dot({-2.6, -2.6}, 0.8, palette::reach),
          hoop({2.4, 2.4}, 0.9, palette::paper, {palette::reach, 0.35, {}})};
}

SymbolMarks pit() {
  const auto wave = [](double x) { return 1.0 + 0.35 * sin(Angle::degrees(x * 130)); };
  return {filled(box(-2.8, 1.0, 2.8, 2.8), palette::water.faded(0.15)),
          closed(box(-2.8, -2.8, 2.8, 2.8), {ink, 0.35, {1, 0.6}}),
          open(curve(-2.6, 2.6, wave), {palette::water, 0.35, {}})};
}

SymbolMarks tunnel() {
  return {closed(box(-3.4, -1.4, -1.6, 1.4), outline), closed(box(1.6, -1.4, 3.4, 1.4), outline),
          open({{-1.6, -0.7}, {1.6, -0.7}}, {ink, 0.35, {1, 0.6}}),
          open({{-1.6, 0.7}, {1.6, 0.7}}, {ink, 0.35, {1, 0.6}})};
}

SymbolMarks drive() {
  const auto bend = [](double x) { return -1.6 * sin(Angle::degrees(x * 26)); };
  return {open(curve(-3.5, 3.5, bend), {palette::earth, 2.4, {}}),
          open(curve(-3.5, 3.5, bend), {palette::gravel, 2.0, {}}),
          open(curve(-3.5, 3.5, bend), {palette::white, 0.2, {1, 0.7}})};
}

SymbolMarks route() {
  const auto bend = [](double x) { return -1.8 * sin(Angle::degrees(x * 27)); };
  return {open(curve(-3.0, 2.8, bend), {ink, 0.4, {1.2, 0.7}}), hoop({-3.1, 1.8}, 0.6, palette::paper, outline),
          open({{1.5, -2.1}, {2.9, -1.7}, {2.0, -0.5}}, {ink, 0.4, {}})};
}

SymbolMarks gate() {
  return {open({{-3.2, 1.5}, {-0.6, -1.1}}, outline), open({{3.2, 1.5}, {0.6, -1.1}}, outline),
          open({{-3.2, 1.5}, {3.2, 1.5}}, {palette::quiet_ink, 0.2, {0.6, 0.6}}), dot({-3.2, 1.5}, 0.65, ink),
          dot({3.2, 1.5}, 0.65, ink)};
}

SymbolMarks scale() {
  SymbolMarks marks{filled(box(-3.5, -1.6, 3.5, 0.2), palette::white), closed(box(-3.5, -1.6, 3.5, 0.2), outline)};
  for (const double x : {-2.1, -0.7, 0.7, 2.1}) marks.push_back(open({{x, -1.6}, {x, 0.2}}, detail));
  for (const double x : {-2.6, 2.6})
    marks.push_back(closed({{x, 0.3}, {x + 0.8, 1.8}, {x - 0.8, 1.8}}, {ink, 0.3, {}}));
  return marks;
}

SymbolMarks building() {
  const Points wall{{-3.0, 3.0}, {-3.0, -0.6}, {0, -3.0}, {3.0, -0.6}, {3.0, 3.0}};
  return {filled(wall, palette::timber), closed(wall, outline), open({{-3.6, -0.1}, {0, -3.0}, {3.6, -0.1}}, outline),
          closed(box(-0.9, 0.6, 0.9, 3.0), detail)};
}

SymbolMarks tank() {
  Points shell = arc({2.0, -0.4}, 1.4, 1.4, -90, 90);
  const Points left = arc({-2.0, -0.4}, 1.4, 1.4, 90, 270);
  shell.insert(shell.end(), left.begin(), left.end());
  return {filled(shell, palette::white), closed(shell, {palette::fuel, 0.35, {}}),
          open({{-1.6, 1.0}, {-1.6, 2.4}}, outline), open({{1.6, 1.0}, {1.6, 2.4}}, outline),
          open({{-0.5, -1.8}, {-0.5, -2.4}, {0.5, -2.4}, {0.5, -1.8}}, {palette::fuel, 0.3, {}})};
}

SymbolMarks well() {
  return {hoop({0, 0}, 2.6, palette::paper, {palette::water, 0.35, {}}),
          hoop({0, 0}, 1.6, palette::none, {palette::water, 0.2, {}}), dot({0, 0}, 0.7, palette::water)};
}

SymbolMarks overhead_line() {
  const auto sag = [](double x) { return -1.4 - 0.09 * (6.25 - x * x); };
  const auto low_sag = [&](double x) { return -1.4 + (-1.4 - sag(x)) * 1.6; };
  SymbolMarks marks{open(curve(-2.5, 2.5, low_sag), {ink, 0.25, {}})};
  for (const double x : {-2.5, 2.5}) {
    marks.push_back(open({{x, -2.8}, {x, 3.3}}, outline));
    marks.push_back(open({{x - 1.0, -1.9}, {x + 1.0, -1.9}}, outline));
  }
  return marks;
}

SymbolMarks berm() {
  const Points hump{{-3.5, 1.8}, {-1.0, -1.2}, {1.0, -1.2}, {3.5, 1.8}};
  SymbolMarks marks{filled(hump, palette::earth.faded(0.3)), open(hump, {palette::earth, 0.4, {}}),
                    open({{-3.8, 1.8}, {3.8, 1.8}}, {palette::earth, 0.2, {}})};
  for (const double x : {-0.8, 0.0, 0.8}) marks.push_back(open({{x, -0.6}, {x * 2.0, 1.0}}, {palette::earth, 0.2, {}}));
  return marks;
}

SymbolMarks swale() {
  const Points dip{{-3.7, -1.4}, {-2.2, -1.4}, {-0.8, 1.4}, {0.8, 1.4}, {2.2, -1.4}, {3.7, -1.4}};
  return {filled({{-1.5, 0.0}, {-0.8, 1.4}, {0.8, 1.4}, {1.5, 0.0}}, palette::water.faded(0.25)),
          open(dip, {palette::earth, 0.4, {}}), open({{-1.5, 0.0}, {1.5, 0.0}}, {palette::water, 0.35, {}})};
}

SymbolMarks pad() {
  const Points top{{-2.0, -1.2}, {3.2, -1.2}, {2.0, 0.8}, {-3.2, 0.8}};
  return {filled(top, palette::white), closed(top, {palette::earth, 0.35, {}}),
          open({{-3.2, 0.8}, {-3.6, 2.0}}, {palette::earth, 0.25, {}}),
          open({{2.0, 0.8}, {2.2, 2.0}}, {palette::earth, 0.25, {}}),
          open({{-3.6, 2.0}, {2.2, 2.0}}, {palette::earth, 0.2, {0.6, 0.5}})};
}

SymbolMarks culvert() {
  return {open({{-2.0, -1.5}, {3.4, -1.5}}, {ink, 0.35, {}}),
          open({{-2.0, 1.5}, {3.4, 1.5}}, {ink, 0.35, {}}),
          open(arc({3.0, 0}, 0.8, 1.5, -90, 90), outline),
          hoop({-2.0, 0}, 1.5, palette::water.faded(0.15), outline),
          open({{-0.2, 0}, {2.4, 0}}, {palette::water, 0.35, {}}),
          open({{1.6, -0.6}, {2.4, 0}, {1.6, 0.6}}, {palette::water, 0.35, {}})};
}

SymbolMarks cover() {
  const Points patch{{-3.2, -1.8}, {2.4, -2.8}, {3.4, 1.6}, {-2.2, 2.8}};
  SymbolMarks marks{filled(patch, palette::grass), closed(patch, {palette::earth, 0.25, {0.4, 0.6}})};
  for (const DrawPoint at : {DrawPoint{-1.2, 0.2}, {1.2, -0.9}, {1.0, 1.4}}) {
    marks.push_back(open({{at.x - 0.5, at.y - 0.8}, at, {at.x + 0.5, at.y - 0.8}}, {palette::pass, 0.22, {}}));
  }
  return marks;
}

SymbolMarks picture() {
  SymbolMarks marks{filled(box(-3.3, -2.5, 3.3, 2.5), palette::grass),
                    open({{-3.3, 1.2}, {3.3, -0.4}}, {palette::gravel, 0.9, {}}),
                    hoop({-0.9, -0.9}, 0.8, palette::steel, detail), hoop({1.1, -1.3}, 0.8, palette::steel, detail)};
  for (const double x : {-1.0, 1.0}) {
    for (const double y : {-1.0, 1.0}) {
      marks.push_back(open({{x * 3.5, y * 1.4}, {x * 3.5, y * 2.7}, {x * 2.2, y * 2.7}}, outline));
    }
  }
  return marks;
}

SymbolMarks dimension() {
  return {open({{-3.2, 0}, {3.2, 0}}, {ink, 0.25, {}}), open({{-3.2, -1.8}, {-3.2, 1.8}}, detail),
          open({{3.2, -1.8}, {3.2, 1.8}}, detail), open({{-3.9, 0.7}, {-2.5, -0.7}}, {ink, 0.45, {}}),
          open({{2.5, 0.7}, {3.9, -0.7}}, {ink, 0.45, {}})};
}

SymbolMarks retaining_wall() {
  SymbolMarks marks{filled(box(-3.4, -2.6, -0.4, 2.6), palette::earth.faded(0.35)),
                    filled(box(-0.4, -3.2, 0.6, 2.6), palette::paved), closed(box(-0.4, -3.2, 0.6, 2.6), outline),
                    open({{0.6, 2.6}, {3.4, 2.6}}, {palette::earth, 0.35, {}})};
  for (const double y : {-1.2, 0.8}) marks.push_back(open({{-0.4, y}, {0.6, y}}, detail));
  return marks;
}

SymbolMarks curb() {
  return {open({{-3.4, 1.6}, {0.2, 1.6}}, outline), filled(box(0.2, 0.0, 1.6, 3.0), palette::paved),
          closed(box(0.2, 0.0, 1.6, 3.0), outline), open({{1.6, 2.6}, {3.4, 2.6}}, {palette::earth, 0.35, {}}),
          open(curve(-3.2, 0.0, [](double x) { return 0.6 + 0.2 * sin(Angle::degrees(x * 220)); }),
               {palette::water, 0.3, {}})};
}

SymbolMarks catch_basin() {
  SymbolMarks marks{filled(box(-2.4, -2.4, 2.4, 2.4), palette::water.faded(0.15)),
                    closed(box(-2.4, -2.4, 2.4, 2.4), outline)};
  for (const double x : {-1.2, 0.0, 1.2}) marks.push_back(open({{x, -1.7}, {x, 1.7}}, {palette::water, 0.45, {}}));
  return marks;
}

SymbolMarks trench_drain() {
  SymbolMarks marks{filled(box(-3.6, -0.9, 3.6, 0.9), palette::water.faded(0.15)),
                    closed(box(-3.6, -0.9, 3.6, 0.9), outline)};
  for (const double x : {-2.4, -1.2, 0.0, 1.2, 2.4}) marks.push_back(open({{x, -0.9}, {x, 0.9}}, detail));
  return marks;
}

SymbolMarks tile_line() {
  return {open({{-3.4, -1.0}, {3.0, 1.2}}, {palette::water, 0.6, {1.4, 0.6}}),
          open({{1.6, 1.7}, {3.2, 1.25}, {2.2, 0.0}}, {palette::water, 0.35, {}}),
          open({{-3.6, -2.4}, {3.6, -2.4}}, {palette::earth, 0.35, {}})};
}

SymbolMarks downspout() {
  return {open({{-3.2, -2.6}, {1.2, -2.6}}, {ink, 0.6, {}}), open({{0.6, -2.6}, {0.6, 1.4}, {2.0, 2.4}}, outline),
          open({{2.4, 2.6}, {3.4, 3.0}}, {palette::water, 0.4, {}})};
}

SymbolMarks receiving_ditch() {
  const auto wave = [](double x) { return 0.3 * sin(Angle::degrees(x * 150)); };
  return {open({{-3.6, -2.0}, {-1.6, 2.2}, {1.6, 2.2}, {3.6, -2.0}}, {palette::earth, 0.4, {}}),
          filled({{-2.6, 0.1}, {2.6, 0.1}, {1.6, 2.2}, {-1.6, 2.2}}, palette::water.faded(0.25)),
          open(curve(-2.5, 2.5, wave), {palette::water, 0.35, {}})};
}

struct KindSymbol {
  std::string_view key;
  SymbolMarks (*draw)();
};

constexpr std::array kind_symbols{KindSymbol{Bin::key, bin},
                                  KindSymbol{Leg::key, leg},
                                  KindSymbol{Dryer::key, dryer},
                                  KindSymbol{OverheadHolding::key, overhead_holding},
                                  KindSymbol{Receiving::key, receiving},
                                  KindSymbol{Conveyor::key, conveyor},
                                  KindSymbol{Spout::key, spout},
                                  KindSymbol{Pit::key, pit},
                                  KindSymbol{Tunnel::key, tunnel},
                                  KindSymbol{Drive::key, drive},
                                  KindSymbol{Route::key, route},
                                  KindSymbol{Gate::key, gate},
                                  KindSymbol{Scale::key, scale},
                                  KindSymbol{Building::key, building},
                                  KindSymbol{Tank::key, tank},
                                  KindSymbol{Well::key, well},
                                  KindSymbol{OverheadLine::key, overhead_line},
                                  KindSymbol{Berm::key, berm},
                                  KindSymbol{Swale::key, swale},
                                  KindSymbol{Pad::key, pad},
                                  KindSymbol{Culvert::key, culvert},
                                  KindSymbol{RetainingWall::key, retaining_wall},
                                  KindSymbol{Curb::key, curb},
                                  KindSymbol{CatchBasin::key, catch_basin},
                                  KindSymbol{TrenchDrain::key, trench_drain},
                                  KindSymbol{TileLine::key, tile_line},
                                  KindSymbol{Downspout::key, downspout},
                                  KindSymbol{ReceivingDitch::key, receiving_ditch},
                                  KindSymbol{Cover::key, cover},
                                  KindSymbol{Picture::key, picture},
                                  KindSymbol{Dimension::key, dimension}};

void change(LineMark& mark, auto move) {
  for (DrawPoint& point : mark.points) point = move(point);
}
void change(AreaMark& mark, auto move) {
  for (auto& corners : mark.rings) {
    for (DrawPoint& point : corners) point = move(point);
  }
}
void change(CircleMark& mark, auto move) { mark.centre = move(mark.centre); }

}  // namespace

SymbolMarks symbol_of_kind(std::string_view key) {
  for (const KindSymbol& symbol : kind_symbols) {
    if (symbol.key == key) return symbol.draw();
  }
  return {};
}

SymbolMarks symbol_of(Verdict verdict) {
  const Colour colour = palette::of(verdict);
  switch (verdict) {
    case Verdict::fail:
      return {open({{-1.2, -1.2}, {1.2, 1.2}}, {colour, 0.6, {}}), open({{-1.2, 1.2}, {1.2, -1.2}}, {colour, 0.6, {}})};
    case Verdict::caution:
      return {filled({{0, -1.3}, {1.45, 1.15}, {-1.45, 1.15}}, colour.faded(0.15)),
              closed({{0, -1.3}, {1.45, 1.15}, {-1.45, 1.15}}, {colour, 0.5, {}})};
    case Verdict::pass: return {open({{-1.3, 0.1}, {-0.4, 1.0}, {1.4, -1.0}}, {colour, 0.6, {}})};
    case Verdict::not_checked: break;
  }
  return {hoop({0, 0}, 1.2, palette::none, {colour, 0.5, {0.5, 0.442}})};
}

SymbolMarks scaled(SymbolMarks marks, double factor) {
  const auto grow = [factor](DrawPoint point) { return DrawPoint{point.x * factor, point.y * factor}; };
  for (auto& mark : marks) {
    std::visit([&](auto& simple) { change(simple, grow); }, mark);
    if (auto* circle = std::get_if<CircleMark>(&mark)) circle->radius *= factor;
  }
  return marks;
}

SymbolMarks shifted(SymbolMarks marks, DrawVector by) {
  for (auto& mark : marks) {
    std::visit([&](auto& simple) { change(simple, [by](DrawPoint point) { return point + by; }); }, mark);
  }
  return marks;
}

}  // namespace yardwright
