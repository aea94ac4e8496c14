// The JSON Schema of the site file, made from the fields that the kinds describe, so that other programs can
// check a file before they hand it over. docs/yard.schema.json is this text. Bounds that hang on the file's units
// are in the descriptions; what ties parts together (references, phases, the lot's shape) only the reader checks.
#pragma once

#include <string>

namespace yardwright {

std::string site_schema();

}  // namespace yardwright
