// The least change that mends a finding and breaks nothing that was in order, proven by asking the changed yard every question:
// of one thing in one way, or where none is found, two such together. Unlike changes are told apart by what they are worth
// (effort.hpp). Takes from a tenth of a second to some seconds a finding. Method and limits: docs/methods/grow.md.
#pragma once

#include "geom/grow/change.hpp"
#include "geom/grow/room_to_move.hpp"

namespace yardwright::grow {

/// Whether a change is wanted.
bool wants_change(const Finding& finding);

/// Seeks for the findings of one yard, whose answers hold their own mends. Remembers where its things may stand; one thread
/// asks. The same yard gives the same changes.
class LeastChanges {
 public:
  LeastChanges(Site site, Answers answers, const Catalogs& shipped);

  /// Nothing proven where it was stopped before one was found.
  Found of(const Finding& finding, std::stop_token stop = {});

 private:
  Site site_;
  Answers answers_;
  Catalogs catalogs_;
  KnownReasons reasons_;
};

}  // namespace yardwright::grow
