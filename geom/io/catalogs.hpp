// The shipped rule book and catalogues of assets/, read once from the text compiled into the program.
#pragma once

#include "geom/site/catalog/catalogs.hpp"

namespace yardwright {

/// All of them; a fault in a shipped file is our own mistake and ends the program with a sentence.
const Catalogs& shipped_catalogs();

}  // namespace yardwright
