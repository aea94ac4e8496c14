// One thing on the plan: what it is (its kind, with the kind's own fields), its name, and the phase in which it
// is built. To add a kind: write geom/site/kinds/NAME.hpp, add it to Thing, give it a footprint.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "geom/site/field.hpp"
#include "geom/site/kinds/berm.hpp"
#include "geom/site/kinds/bin.hpp"
#include "geom/site/kinds/building.hpp"
#include "geom/site/kinds/catch_basin.hpp"
#include "geom/site/kinds/conveyor.hpp"
#include "geom/site/kinds/cover.hpp"
#include "geom/site/kinds/culvert.hpp"
#include "geom/site/kinds/curb.hpp"
#include "geom/site/kinds/dimension.hpp"
#include "geom/site/kinds/downspout.hpp"
#include "geom/site/kinds/drive.hpp"
#include "geom/site/kinds/dryer.hpp"
#include "geom/site/kinds/gate.hpp"
#include "geom/site/kinds/leg.hpp"
#include "geom/site/kinds/overhead_holding.hpp"
#include "geom/site/kinds/overhead_line.hpp"
#include "geom/site/kinds/pad.hpp"
#include "geom/site/kinds/picture.hpp"
#include "geom/site/kinds/pit.hpp"
#include "geom/site/kinds/receiving.hpp"
#include "geom/site/kinds/receiving_ditch.hpp"
#include "geom/site/kinds/retaining_wall.hpp"
#include "geom/site/kinds/route.hpp"
#include "geom/site/kinds/scale.hpp"
#include "geom/site/kinds/spout.hpp"
#include "geom/site/kinds/swale.hpp"
#include "geom/site/kinds/tank.hpp"
#include "geom/site/kinds/tile_line.hpp"
#include "geom/site/kinds/trench_drain.hpp"
#include "geom/site/kinds/tunnel.hpp"
#include "geom/site/kinds/well.hpp"

namespace yardwright {

/// Every kind, in the order in which the editor's tray and the format page list them.
using Thing =
    std::variant<Bin, Leg, Dryer, OverheadHolding, Receiving, Conveyor, Spout, Pit, Tunnel, Drive, Route, Gate, Scale,
                 Building, Tank, Well, OverheadLine, Berm, Swale, Pad, RetainingWall, Curb, Culvert, CatchBasin,
                 TrenchDrain, TileLine, Downspout, ReceivingDitch, Cover, Picture, Dimension>;

struct Item {
  ItemId id;
  std::string name;
  int phase = 0;               ///< 0 exists today; 1, 2, ... are built later
  std::optional<int> gone_in;  ///< the phase in which it is taken away
  Thing thing;
  bool operator==(const Item&) const = default;
};

/// The kind's key, as in the file: "overhead-line".
std::string_view kind_key(const Thing& thing);
/// The kind's word, as people read it: "overhead line".
std::string_view kind_label(const Thing& thing);

/// A thing of every kind, with its defaults, in Thing's order.
std::vector<Thing> every_kind();
/// A thing of the kind with this key, with its defaults; nothing where no kind has it.
std::optional<Thing> thing_of_kind(std::string_view key);

/// Its name, or its kind and number where it has none: "bin 4".
std::string title_of(const Item& item);

/// The kind's own struct where the item is of that kind, else null.
template <class Kind>
const Kind* as(const Item& item) {
  return std::get_if<Kind>(&item.thing);
}

}  // namespace yardwright
