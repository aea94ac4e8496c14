// The outlets of legs: which are used, which are left with some things gone, and who takes them.
#pragma once

#include <optional>

#include "geom/site/finding.hpp"

namespace yardwright::grow {

/// By the spouts of a leg, less those that are gone or hang on what is.
int used_outlets(const Site& site, ItemId leg, const std::vector<ItemId>& gone = {});
/// Of all legs together.
int free_outlets(const Site& site, const std::vector<ItemId>& gone = {});

/// The bins of a phase that spouts fill, and its spouts to what was there before; in the order in which spouts were placed.
std::vector<ItemId> outlet_takers(const Site& site, int phase);

/// "give Leg a distributor with more outlets": at least so many.
Mend wider_distributor(const Item& leg, int outlets);
/// One for the leg on which it hangs, with as many left; nothing where no distributor is so large.
std::optional<Mend> wider_distributor_for(const Site& site, ItemId taker, int left);

}  // namespace yardwright::grow
