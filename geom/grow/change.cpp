#include "geom/grow/change.hpp"

#include "geom/site/finding_words.hpp"

namespace yardwright::grow {

Edits Change::edits() const {
  Edits all;
  for (const Mend& mend : mends) all.insert(all.end(), mend.edits.begin(), mend.edits.end());
  return all;
}

std::string change_words(const Change& change, UnitSystem units) {
  std::string words;
  for (const Mend& mend : change.mends) words += (words.empty() ? "" : ", and ") + mend_words(mend, units);
  return words;
}

void Found::offer(Change proven) {
  if (is_beaten_by(proven.effort_m)) least = std::move(proven);
}

}  // namespace yardwright::grow
