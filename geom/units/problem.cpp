#include "geom/units/problem.hpp"

namespace yardwright {

std::string sentence(const Problem& problem) {
  std::string text = problem.where.empty() ? problem.what : problem.where + ": " + problem.what;
  if (!problem.mend.empty()) text += "; " + problem.mend;
  return text;
}

}  // namespace yardwright
