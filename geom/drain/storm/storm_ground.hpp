// The yard as a storm meets it: the bed with everything that turns water standing on it, the cover of every cell, roofs
// that shed beside themselves, pits with their rims and tunnels, and culverts. Levels in metres in the datum of the
// ground; cells by their offset in its grid. Page: docs/methods/storm.md
#pragma once

#include "geom/drain/cover_map.hpp"
#include "geom/drain/culvert_flow.hpp"
#include "geom/drain/storm/pit_network.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/ground/design_surface.hpp"

namespace yardwright::drain::storm {

/// Rain on a roof comes down on the ground around it; so does that on the cells of a pit's hole beyond the hole itself.
struct Roof {
  ItemId item;
  double area_m2 = 0;
  std::vector<Cell> drip;  ///< the cells around it
  bool is_wall = true;     ///< water stands against it
};

/// A stretch of a pit's rim, beside a cell of ground.
struct RimStretch {
  Cell cell = outside;
  double length_m = 0;
};

struct PitMouth {
  std::vector<RimStretch> rim;
  double sky_m2 = 0;  ///< of the hole, open to the rain
};

struct CulvertPipe {
  ItemId item;
  CulvertBarrel barrel;
  Cell start = outside;
  Cell end = outside;
  double tailwater_level_m = 0;  ///< that always stands there
};

/// A grate over a tile line, and the cells whose water it takes.
struct TileGrate {
  ItemId item;
  std::size_t line = 0;
  Grate grate;
  std::vector<Cell> cells;
};

/// Rain of a roof that runs into a tile line; what the line does not take comes out at the foot of the downspout.
struct PipedRoof {
  std::size_t line = 0;
  double area_m2 = 0;
  Cell foot = outside;
};

/// Where the water of a tile line comes out: a cell, a pit, or neither where it is gone.
struct TileOutlet {
  Cell cell = outside;
  std::optional<std::size_t> pit;
};

struct Tiles {
  std::vector<TileRun> lines;  ///< each after those that run into it
  std::vector<TileOutlet> outlets;
  std::vector<TileGrate> grates;
  std::vector<PipedRoof> roofs;
};

/// Water that stands higher than its own level has left.
struct DitchCell {
  Cell cell = outside;
  double depth_m = 0;
};

struct StormGround {
  LevelGrid bed;
  std::vector<float> roughness_n;
  std::vector<std::uint8_t> kind;     ///< of each cell's cover, the last where no rain comes to the ground
  std::vector<double> curve_numbers;  ///< of the kinds; one fewer than there are
  double roof_curve_number = 98;
  std::vector<Roof> roofs;
  std::vector<PitTank> tanks;
  std::vector<PitMouth> mouths;  ///< of the tanks, in their order
  std::vector<TunnelLink> tunnels;
  std::vector<CulvertPipe> culverts;
  Tiles tiles;
  std::vector<DitchCell> ditches;
  std::vector<std::string> left_out;  ///< what could not be a part of it, a sentence each
};

/// The surface must be known and without gaps, and the storm's cover known.
StormGround storm_ground(const Site& site, const DesignSurface& surface, const CoverMap& covers);

}  // namespace yardwright::drain::storm
