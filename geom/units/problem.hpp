// Something wrong with data from outside: what, where and what to do about it. A poor design is no Problem but
// a Finding; a broken promise of our own code is an assert.
#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace yardwright {

struct Problem {
  std::string what;   ///< "diameter is -3 ft"
  std::string where;  ///< file, line, item and field: "yard.yard, item 4 (North 1), diameter"
  std::string mend;   ///< "give a diameter between 3 and 200 ft"
  bool operator==(const Problem&) const = default;
};

using Problems = std::vector<Problem>;

template <class T>
using Expected = tl::expected<T, Problems>;

inline tl::unexpected<Problems> refused(std::string what, std::string where, std::string mend) {
  return tl::unexpected<Problems>{{Problem{std::move(what), std::move(where), std::move(mend)}}};
}

/// "where: what; mend", one sentence.
std::string sentence(const Problem& problem);

}  // namespace yardwright
