// The catalogues of this folder, as text, compiled in.
#pragma once

#include <string_view>

namespace yardwright {

/// The content of assets/NAME; empty where there is no such file.
std::string_view asset(std::string_view name);

}  // namespace yardwright
