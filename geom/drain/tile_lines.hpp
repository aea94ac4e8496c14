// The buried pipes of a yard as one system: which catch basin, trench drain, downspout and tile line runs into which line, and
// where each line lets its water out. Levels in metres in the datum of the ground. Page: docs/methods/storm.md
#pragma once

#include <string>
#include <vector>

#include "geom/drain/openings.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

struct TilePipe {
  double diameter_m = 0;
  double length_m = 0;
  double start_invert_m = 0;
  double end_invert_m = 0;
  double roughness_n = 0.011;

  double start_crown_m() const { return start_invert_m + diameter_m; }
  double end_crown_m() const { return end_invert_m + diameter_m; }
};

/// Full, by the water over its upper end and beyond its outlet; each counts only above the pipe's crown there. Entrance,
/// exit and friction by Manning: HEC-22 4th ed., chapter 9. Never backwards.
double tile_m3_per_s(const TilePipe& pipe, double start_level_m, double outlet_level_m);

enum class TileEnd : std::uint8_t { ground, pit, ditch, line, beyond };  ///< beyond: off the known ground

struct TileRun {
  ItemId item;
  TilePipe pipe;
  TileEnd end = TileEnd::ground;
  ItemId into;           ///< the pit, ditch or tile line at its end
  std::size_t line = 0;  ///< where it ends in another: that one's place in the list
  SitePoint outlet;
  double tailwater_level_m = 0;  ///< that always stands there
};

struct TileInlet {
  ItemId item;
  std::size_t line = 0;
  SitePath along;  ///< where it takes water in; one point for a basin
  Grate grate;
};

struct TileRoof {
  ItemId downspout;
  ItemId roof;
  double share_ratio = 1;
  std::size_t line = 0;
};

struct LeftOut {
  ItemId item;
  std::string why;
};

struct TileSystem {
  std::vector<TileRun> lines;  ///< each after those that run into it
  std::vector<TileInlet> inlets;
  std::vector<TileRoof> roofs;
  std::vector<LeftOut> left_out;  ///< what could not be a part of it
};

/// What was drawn within arm's reach of a line lies on it.
TileSystem tile_system(const Site& site, const DesignSurface& surface);

}  // namespace yardwright::drain
