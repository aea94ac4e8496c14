// Sites of random content, every value within what its field allows: for promises that hold for any site.
#pragma once

#include <random>

#include "geom/site/site.hpp"

namespace yardwright::tests {

/// With at least one item of every kind, in random order of ids, and a random lot, storm, title and rules.
Site random_site(std::mt19937& random, UnitSystem units);

/// Levels of a small ground with an odd frame.
LevelGrid random_levels(std::mt19937& random);

}  // namespace yardwright::tests
