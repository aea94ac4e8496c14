#include <fmt/format.h>

#include <algorithm>

#include "geom/pace/bin_volume.hpp"
#include "geom/sheet/plan_item.hpp"
#include "geom/sheet/size_words.hpp"

namespace yardwright::plan {

namespace {

constexpr int roof_ribs = 24;

void add_roof(Marks& marks, SitePoint centre, double radius_m, Colour fill, const Stroke& edge) {
  marks.push_back(circle(centre, radius_m, fill, edge));
  const Stroke rib{palette::steel_rib, 0.12, {}};
  for (int i = 0; i < roof_ribs; ++i) {
    const SiteVector out = direction(Bearing::degrees(i * 360.0 / roof_ribs));
    marks.push_back(line({centre + out * (radius_m * 0.14), centre + out * (radius_m * 0.985)}, rib));
  }
  marks.push_back(circle(centre, radius_m * 0.14, fill, rib));
  marks.push_back(circle(centre, radius_m * 0.05, palette::quiet_ink, {palette::none, 0, {}}));
}

/// The fan and its transition against the wall.
void add_fan(Marks& marks, const Bin& bin) {
  const SiteVector out = direction(bin.fan_side);
  const double deep_m = 1.2;
  const Polygon box = rectangle({bin.at + out * (bin.diameter_m / 2 + deep_m / 2), bin.fan_side}, deep_m, 1.5);
  add_polygon(marks, box, palette::white, {palette::ink, 0.2, {}});
  marks.push_back(line({box.outer[0], box.outer[2]}, {palette::ink, 0.13, {}}));
  marks.push_back(line({box.outer[1], box.outer[3]}, {palette::ink, 0.13, {}}));
}

void add_unloading(Marks& marks, const Bin& bin) {
  const SiteVector out = direction(bin.unload_side);
  const SitePoint wall = bin.at + out * (bin.diameter_m / 2);
  const SitePoint end = wall + out * 1.5;
  marks.push_back(line({wall, end}, {palette::ink, 0.25, {}}));
  marks.push_back(arrowhead(end, out, 1.1, {palette::ink, 0.25, {}}));
}

/// "36 ft · 21.7k bu", or the eave where the grain is not known.
std::string label_size(const Bin& bin, const PlanStyle& style) {
  const std::string across = short_text_of(bin.diameter_m, Quantity::length, style.units);
  const auto grain = std::ranges::find(style.grains, bin.grain, &Grain::id);
  if (grain == style.grains.end())
    return fmt::format("{} · eave {}", across, short_text_of(bin.eave_height_m, Quantity::length, style.units));
  const GrainVolume holds = pace::heaped(pace::room_of(bin), *grain).total;
  return fmt::format("{} · {}", across, short_volume_text(holds.as_cubic_metres(), style.units));
}

Colour roof_colour(bool wet) { return wet ? Colour{0xd5, 0xe2, 0xec} : palette::steel; }

}  // namespace

ItemMarks marks_of(const Bin& bin, const Scene& scene) {
  ItemMarks marks;
  add_fan(marks.shapes, bin);
  add_unloading(marks.shapes, bin);
  add_roof(marks.shapes, bin.at, bin.diameter_m / 2, roof_colour(bin.use == BinUse::wet_holding),
           {palette::ink, 0.4, {}});
  const double radius_m = bin.diameter_m / 2;
  add_label(marks, scene, {bin.at, radius_m, radius_m, true}, Prefer::inside, label_size(bin, scene.style));
  return marks;
}

ItemMarks marks_of(const OverheadHolding& holding, const Scene& scene) {
  ItemMarks marks;
  const Polygon stand = rectangle({holding.at, holding.facing}, holding.stand_width_m, holding.stand_width_m);
  add_polygon(marks.shapes, stand, palette::white.faded(0.6), {palette::ink, 0.25, {}});
  for (const SitePoint corner : stand.outer) {
    marks.shapes.push_back(spot(corner, 0.5, palette::ink, {palette::none, 0, {}}));
  }
  add_roof(marks.shapes, holding.at, holding.diameter_m / 2, roof_colour(holding.use == HoldingUse::wet_holding),
           {palette::ink, 0.35, {1.6, 0.8}});
  add_label(marks, scene, around(stand), Prefer::inside,
            short_text_of(holding.diameter_m, Quantity::length, scene.style.units));
  return marks;
}

}  // namespace yardwright::plan
