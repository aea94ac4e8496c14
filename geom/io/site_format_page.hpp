// The field tables of docs/format.md, made from the fields that the kinds describe.
#pragma once

#include <string>

namespace yardwright {

/// Markdown: a table for each part of the site and each kind of item.
std::string site_format_tables();

}  // namespace yardwright
