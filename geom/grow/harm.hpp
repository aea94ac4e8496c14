// What a change of a yard does harm to: its findings after the change held against those before.
#pragma once

#include <map>

#include "geom/check/check.hpp"

namespace yardwright::grow {

/// A yard whose questions have been answered, with the catalogues in force on it.
struct CheckedYard {
  const Site& site;
  const Answers& answers;
  const Catalogs& catalogs;
};

/// Fails, or wants caution.
bool is_wanting(const Finding& finding);

/// The yard must outlive it.
class Harm {
 public:
  explicit Harm(const CheckedYard& yard);

  /// Worse than before, or new and not passing. Two are not held to be new: advice on what failed before, and two things too
  /// near each other that were so before, though Clear told of a nearer one alone.
  Findings broken(const Findings& after) const;

 private:
  bool was_so_untold(const Finding& after) const;
  bool is_broken(const Finding& after) const;

  CheckedYard yard_;
  std::map<std::string, Verdict> before_;  ///< the worst by id
  Findings wanting_before_;
};

}  // namespace yardwright::grow
