// Clear: are the distances kept, to lines, lot edges, wells, tanks, dwellings and other bins? Wall to wall on the
// plan, by the rule book's figures. Local code, the utility and the tank's supplier decide; the words say so.
// Method, sources and limits: docs/methods/clear.md.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/shape/polygon.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::clear {

/// What is drawn between two things: each break, and the tightest place of each rule that is kept.
struct NearPlace {
  std::string rule;
  Verdict verdict = Verdict::pass;
  ItemId of, to;
  NearestPair pair;
  double required_m = 0;
};

/// Where raised machines stay out, to both sides of an overhead line.
struct LineStrip {
  ItemId line;
  double half_width_m = 0;
  Region keep_clear;
};

/// How far from a bin's wall a line must stay for a portable auger; nothing where it clears at any distance.
struct PortRing {
  ItemId bin, line;
  std::optional<double> required_m;
};

struct Answer {
  Findings findings;
  std::vector<NearPlace> near;
  std::vector<LineStrip> strips;
  std::vector<PortRing> rings;
};

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

}  // namespace yardwright::clear
