// How often a storm does what its findings tell of: it is run for depths of the site's rain table, no more of them than it takes
// to find the least that does it. That of a deeper rain is taken to do it too. Page: docs/methods/storm.md
#pragma once

#include "geom/drain/recurrence.hpp"
#include "geom/drain/storm/storm.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::drain::storm {

enum class Event : std::uint8_t { falls_short, pit_full };
constexpr std::array<std::string_view, 2> names_of(Event) { return {"falls-short", "pit-full"}; }

struct HowOften {
  std::string finding;  ///< its id, as of judge_storm
  ItemId item;
  Event event = Event::falls_short;
  Recurrence recurrence;
};

struct Frequencies {
  std::vector<HowOften> all;
  int storms = 0;        ///< that were run for it
  bool stopped = false;  ///< then nothing is told
};

/// Why it cannot be told where the site has no rain table.
tl::unexpected<Problems> no_rain_table();

/// Refused where the table is not known, or the storm cannot be run.
Expected<Frequencies> how_often(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                const StormOptions& options, const Progress& progress = {});

/// Adds it in words to the notes of the findings.
void tell_how_often(Findings& findings, const Frequencies& frequencies, double yard_life_years);

}  // namespace yardwright::drain::storm
