// Gives every label the best of its places that is left: in the order given, then once more around now that all of
// them stand somewhere. Covering another label costs more than the longest leader line, so labels are apart wherever
// the paper has the room.
#pragma once

#include "geom/sheet/label.hpp"
#include "geom/sheet/label_box.hpp"

namespace yardwright {

struct PlacedLabel {
  const LabelSpot* spot = nullptr;  ///< of the label; null where it was left out
  LabelBox box;
  PaperPoint leader_end;
};

/// As long as `labels`, which must outlive it.
std::vector<PlacedLabel> place_labels(const std::vector<Label>& labels, const std::vector<Obstacle>& obstacles,
                                      const LabelPaper& paper);

}  // namespace yardwright
