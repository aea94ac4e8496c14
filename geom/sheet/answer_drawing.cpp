#include "geom/sheet/answer_drawing.hpp"

#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

const Stroke swept_edge{palette::water.faded(0.75), 0.3, {}};
const Stroke driven_line{palette::water.faded(0.6), 0.2, {2.4, 1.2}};
const Stroke water_edge{palette::water, 0.25, {}};
const Stroke catchment_edge{palette::water.faded(0.6), 0.25, {1.2, 1.0}};

constexpr double course_step_m = 1.0;

void add_pond(Drawing& drawing, const drain::Pond& pond) {
  AreaMark water{{}, palette::water.faded(0.28)};
  for (const SitePath& ring_of_pond : pond.rings) water.rings.push_back(on_plan(ring_of_pond));
  drawing.marks.push_back(std::move(water));
  for (const SitePath& ring_of_pond : pond.rings) drawing.marks.push_back(ring(ring_of_pond, water_edge));
}

}  // namespace

Drawing turn_drawing(const turn::Answer& answer) {
  Drawing drawing;
  for (const turn::DrivenRoute& route : answer.routes) {
    add_region(drawing.marks, route.swept, palette::none, swept_edge);
    drawing.marks.push_back(line(as_path(route.course, course_step_m), driven_line));
  }
  return drawing;
}

Drawing drain_drawing(const drain::Answer& answer) {
  Drawing drawing;
  for (const drain::PitWater& pit : answer.pits) {
    for (const SitePath& edge : pit.catchment_rings) drawing.marks.push_back(ring(edge, catchment_edge));
  }
  for (const drain::Pond& pond : answer.ponds) add_pond(drawing, pond);
  return drawing;
}

}  // namespace yardwright
